import { useState } from 'react';
import { graphql } from '../../../graphql/__generated__/gql.js';
import { useDeed } from '../../../page/use-deed.js';
import type { Changed } from './ChangedNote.js';
import type { DismissReason } from './dialogs/dismiss-reasons.js';

const dismissDocument = graphql(`
  mutation DismissFinding($id: ID!, $version: Int!, $reason: String!, $why: String!) {
    dismissFinding(id: $id, version: $version, reason: $reason, why: $why) {
      __typename
      ... on Finding {
        id
        version
        state
        dismissedWhy
        decidedBy
        decidedAt
      }
      ... on ChangedMeanwhile {
        changedBy
        changedAt
      }
    }
  }
`);

const acknowledgeDocument = graphql(`
  mutation AcknowledgeFinding($id: ID!, $version: Int!, $until: Date, $note: String!) {
    acknowledgeFinding(id: $id, version: $version, until: $until, note: $note) {
      __typename
      ... on Finding {
        id
        version
        isSilenced
        acknowledgedAt
        acknowledgedBy
        acknowledgedNote
        acknowledgedUntil
      }
      ... on ChangedMeanwhile {
        changedBy
        changedAt
      }
    }
  }
`);

const resolveDocument = graphql(`
  mutation ResolveFinding($id: ID!, $version: Int!, $with: String!) {
    resolveFinding(id: $id, version: $version, with: $with) {
      __typename
      ... on Finding {
        id
        version
        state
        resolvedWith
        decidedBy
        decidedAt
      }
      ... on ChangedMeanwhile {
        changedBy
        changedAt
      }
    }
  }
`);

const reopenDocument = graphql(`
  mutation ReopenFinding($id: ID!, $version: Int!) {
    reopenFinding(id: $id, version: $version) {
      __typename
      ... on Finding {
        id
        version
        state
        dismissedWhy
        resolvedWith
        decidedBy
        decidedAt
      }
      ... on ChangedMeanwhile {
        changedBy
        changedAt
      }
    }
  }
`);

type Outcome =
  | { readonly __typename: 'Finding'; readonly id: string; readonly version: number }
  | ({ readonly __typename: 'ChangedMeanwhile' } & Changed);
/** What became of it: its new version, so that it can be taken back; null where nothing was done. */
type Settled = { readonly id: string; readonly version: number } | null;

export interface Settle {
  readonly dismiss: (id: string, version: number, given: { readonly reason: DismissReason; readonly why: string }) => Promise<Settled>;
  /** Silent until the end of a day; null: until it clears. */
  readonly acknowledge: (id: string, version: number, given: { readonly until: string | null; readonly note: string }) => Promise<Settled>;
  readonly resolve: (id: string, version: number, found: string) => Promise<Settled>;
  readonly reopen: (id: string, version: number) => Promise<Settled>;
  readonly isBusy: boolean;
  readonly problem: unknown;
  readonly changed: Changed | null;
}

const OLD = { refetch: ['Findings', 'FindingDetail'] };

/** Settles a finding, or opens it again; somebody quicker is an answer, not a fault. */
export function useSettle(): Settle {
  const [dismiss, acknowledge] = [useDeed(dismissDocument, OLD), useDeed(acknowledgeDocument, OLD)];
  const [resolve, reopen] = [useDeed(resolveDocument, OLD), useDeed(reopenDocument, OLD)];
  const [changed, setChanged] = useState<Changed | null>(null);
  const settled = (outcome: Outcome | undefined): Settled => {
    switch (outcome?.__typename) {
      case 'Finding':
        setChanged(null);
        return { id: outcome.id, version: outcome.version };
      case 'ChangedMeanwhile':
        setChanged(outcome);
        return null;
      case undefined:
        return null;
    }
  };
  return {
    dismiss: async (id, version, given) => settled((await dismiss.run({ id, version, ...given }))?.dismissFinding),
    acknowledge: async (id, version, given) => settled((await acknowledge.run({ id, version, ...given }))?.acknowledgeFinding),
    resolve: async (id, version, found) => settled((await resolve.run({ id, version, with: found }))?.resolveFinding),
    reopen: async (id, version) => settled((await reopen.run({ id, version }))?.reopenFinding),
    isBusy: dismiss.isBusy || acknowledge.isBusy || resolve.isBusy || reopen.isBusy,
    problem: dismiss.problem ?? acknowledge.problem ?? resolve.problem ?? reopen.problem,
    changed,
  };
}
