import { useState } from 'react';
import { useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import type { WorkOrderInput } from '../../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { useDeed } from '../../../../page/use-deed.js';
import { useSays } from '../../../../says/use-says.js';
import type { Changed } from '../ChangedNote.js';

const acceptDocument = graphql(`
  mutation AcceptFinding($id: ID!, $version: Int!, $input: WorkOrderInput!) {
    acceptFinding(id: $id, version: $version, input: $input) {
      __typename
      ... on FindingAccepted {
        finding {
          id
          version
          state
        }
        workOrder {
          id
          version
          state
          kind
        }
      }
      ... on ChangedMeanwhile {
        changedBy
        changedAt
      }
    }
  }
`);

const assignDocument = graphql(`
  mutation GiveOutAcceptedWork($id: ID!, $version: Int!, $crewId: ID, $day: Date) {
    assignWorkOrder(id: $id, version: $version, crewId: $crewId, day: $day) {
      __typename
      ... on WorkOrder {
        id
        version
        state
        day
        crew {
          id
          name
        }
      }
      ... on ChangedMeanwhile {
        changedBy
        changedAt
      }
      ... on ApprovalNeeded {
        cost
        notToExceed
      }
    }
  }
`);

export interface CrewAndDay {
  readonly crewId: string;
  readonly crew: string;
  readonly day: string;
}

export interface Accept {
  /** Accepts, makes the work order and gives it out where crew and day are known; says what became of it, null where nothing did. */
  readonly run: (
    finding: { readonly id: string; readonly version: number },
    input: WorkOrderInput,
    to: CrewAndDay | null,
  ) => Promise<string | null>;
  readonly isBusy: boolean;
  readonly problem: unknown;
  readonly changed: Changed | null;
}

const OLD = { refetch: ['Findings', 'FindingDetail'] };

/** From a finding to work: two deeds on the server, told as one. */
export function useAccept(): Accept {
  const intl = useIntl();
  const formats = useFormats();
  const { word } = useSays();
  const [accept, assign] = [useDeed(acceptDocument, OLD), useDeed(assignDocument, OLD)];
  const [changed, setChanged] = useState<Changed | null>(null);
  const done = (kind: string, to: CrewAndDay | null): string =>
    intl.formatMessage({ id: 'accept.done' }, { work: word('work', kind), crew: to?.crew ?? 'none', day: formats.day(to?.day) });
  const giveOut = async (order: { id: string; version: number; kind: string }, to: CrewAndDay): Promise<string> => {
    const outcome = (await assign.run({ id: order.id, version: order.version, crewId: to.crewId, day: to.day }))?.assignWorkOrder;
    switch (outcome?.__typename) {
      case 'WorkOrder':
        return done(order.kind, to);
      case 'ApprovalNeeded':
        return intl.formatMessage({ id: 'accept.waits' }, { cost: formats.money(outcome.cost), limit: formats.money(outcome.notToExceed) });
      case 'ChangedMeanwhile':
      case undefined:
        return intl.formatMessage({ id: 'accept.notAssigned' });
    }
  };
  const run: Accept['run'] = async (finding, input, to) => {
    setChanged(null);
    const outcome = (await accept.run({ id: finding.id, version: finding.version, input }))?.acceptFinding;
    switch (outcome?.__typename) {
      case 'FindingAccepted':
        return to ? giveOut(outcome.workOrder, to) : done(outcome.workOrder.kind, null);
      case 'ChangedMeanwhile':
        setChanged(outcome);
        return null;
      case undefined:
        return null;
    }
  };
  return { run, isBusy: accept.isBusy || assign.isBusy, problem: accept.problem, changed };
}
