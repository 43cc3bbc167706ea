import type { FragmentType } from '@apollo/client';
import { useCallback, useEffect, useRef } from 'react';
import { useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { VisitedStopFragment } from '../../../graphql/__generated__/graphql.js';
import { useDeed } from '../../../page/use-deed.js';
import { useMasked } from '../../../page/use-masked.js';
import { useViewer } from '../../../session/viewer.js';
import { forgetRecord, recordName } from '../device/record-name.js';
import type { Clock } from '../device/use-clock.js';
import type { Sending } from '../device/use-sending.js';

export const visitedStop = graphql(`
  fragment VisitedStop on Stop {
    id
    visit {
      id
      version
      arrivedAt
      closedAt
    }
  }
`);

const arriveDocument = graphql(`
  mutation Arrive($input: VisitInput!) {
    arrive(input: $input) {
      id
      version
      arrivedAt
      closedAt
    }
  }
`);

type Visit = NonNullable<VisitedStopFragment['visit']>;

export interface VisitHere {
  readonly visit: Visit | null;
  /** The visit, begun now where nobody has arrived yet; null where the server did not answer. */
  readonly begin: () => Promise<Visit | null>;
  readonly problem: unknown;
}

interface Options {
  readonly stop: FragmentType<VisitedStopFragment>;
  readonly route: { readonly day: string; readonly crew: { readonly id: string } };
  readonly clock: Clock;
  readonly sending: Sending;
}

/** The visit to this stop. Opening it is arriving, for those who go with its crew on its day; for others the first deed is. */
export function useVisit({ stop: masked, route, clock: { now, isSet }, sending: { send } }: Options): VisitHere {
  const intl = useIntl();
  const viewer = useViewer();
  const { id: stopId, visit } = useMasked(visitedStop, masked);
  const { run, problem } = useDeed(arriveDocument, { refetch: ['Stop'] });
  const begun = useRef<Promise<Visit | null> | null>(null);
  const known = visit ?? null;
  const begin = useCallback((): Promise<Visit | null> => {
    if (known) return Promise.resolve(known);
    begun.current ??= send(intl.formatMessage({ id: 'field.what.arrival' }), async () => {
      const { deviceRecordId, at } = recordName(`arrive.${stopId}`, stopId, now());
      const answer = await run({ input: { deviceRecordId, stopId, arrivedAt: at } });
      if (answer) forgetRecord(`arrive.${stopId}`);
      // Tried again at the next deed.
      else begun.current = null;
      return answer?.arrive ?? null;
    });
    return begun.current;
  }, [known, stopId, now, run, send, intl]);
  const isMine = viewer.crewIds.includes(route.crew.id) && route.day === viewer.organization.today;
  const arrivedFor = useRef<string | null>(null);
  useEffect(() => {
    if (!isSet || !isMine || known || arrivedFor.current === stopId) return;
    arrivedFor.current = stopId;
    void begin();
  }, [isSet, isMine, known, stopId, begin]);
  return { visit: known, begin, problem };
}
