import { useApolloClient } from '@apollo/client/react';
import { useState } from 'react';
import { useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { useDeed } from '../../../../page/use-deed.js';
import { useDraft } from '../../device/use-draft.js';
import type { Sending } from '../../device/use-sending.js';
import { useOrderWords } from '../../use-order-words.js';
import type { VisitHere } from '../use-visit.js';
import { type End, isDecidable } from './order-end.js';

const closeWorkOrderDocument = graphql(`
  mutation CloseWorkOrder($input: CloseOrderInput!) {
    closeWorkOrder(input: $input) {
      __typename
      ... on WorkOrder {
        id
        version
        state
        doneNote
        leftNote
      }
      ... on ChangedMeanwhile {
        id
        version
        changedBy
        changedAt
      }
      ... on ApprovalNeeded {
        needed: cost
        limit: notToExceed
        workOrder {
          id
          version
          state
        }
      }
    }
  }
`);

const closeVisitDocument = graphql(`
  mutation CloseVisit($id: ID!, $version: Int!, $closedAt: DateTime!, $doneNote: String, $leftNote: String) {
    closeVisit(id: $id, version: $version, closedAt: $closedAt, doneNote: $doneNote, leftNote: $leftNote) {
      id
      version
      closedAt
      doneNote
      leftNote
    }
  }
`);

interface Draft {
  readonly orders: Readonly<Record<string, End>>;
  readonly doneNote: string;
  readonly leftNote: string;
}

interface Order {
  readonly id: string;
  readonly version: number;
  readonly kind: string;
  readonly what: string;
  readonly state: string;
}

interface Options {
  readonly stop: { readonly id: string; readonly workOrders: readonly Order[] };
  readonly now: () => Date;
  readonly begin: VisitHere['begin'];
  readonly send: Sending['send'];
}

export interface Closing {
  readonly draft: Draft;
  readonly change: (change: Partial<Draft>) => void;
  readonly changeOrder: (id: string, end: End) => void;
  readonly close: () => Promise<void>;
  /** What keeps the stop from being closed, as a sentence. */
  readonly words: string | null;
  readonly problem: unknown;
  readonly isAgain: boolean;
  readonly again: () => void;
}

const EMPTY: Draft = { orders: {}, doneNote: '', leftNote: '' };

/** Ends a stop: each work order as the crew said, then the visit. What was sent already is not sent twice. */
export function useClosing({ stop, now, begin, send }: Options): Closing {
  const intl = useIntl();
  const orderWords = useOrderWords();
  const endOrder = useOrderEnding();
  const closeVisit = useDeed(closeVisitDocument, { refetch: ['Stop'] });
  const [draft, setDraft, clear] = useDraft<Draft>(`done.${stop.id}`, EMPTY);
  const [words, setWords] = useState<string | null>(null);
  const [isAgain, setAgain] = useState(false);
  const open = stop.workOrders.filter(({ state }) => isDecidable(state));
  const closing = async (): Promise<true | null> => {
    const visit = await begin();
    if (!visit) return null;
    for (const order of open) {
      const end = draft.orders[order.id];
      if (!end) continue;
      const refusal = await endOrder.run(order, end);
      if (refusal === null) return null;
      if (refusal !== 'ended') {
        setWords(refusal);
        return true;
      }
    }
    const notes = { doneNote: draft.doneNote.trim() || null, leftNote: draft.leftNote.trim() || null };
    const closed = await closeVisit.run({ id: visit.id, version: visit.version, closedAt: now().toISOString(), ...notes });
    if (!closed) return null;
    clear();
    setAgain(false);
    return true;
  };
  const close = async (): Promise<void> => {
    const undecided = open.find(({ id }) => !draft.orders[id]);
    setWords(undecided ? intl.formatMessage({ id: 'field.done.undecided' }, { what: orderWords(undecided) }) : null);
    if (!undecided) await send(intl.formatMessage({ id: 'field.what.end' }), closing);
  };
  return {
    draft,
    change: (change) => setDraft({ ...draft, ...change }),
    changeOrder: (id, end) => setDraft({ ...draft, orders: { ...draft.orders, [id]: end } }),
    close,
    words,
    problem: endOrder.problem ?? closeVisit.problem,
    isAgain,
    again: () => setAgain(true),
  };
}

/** Ends one work order: 'ended', a sentence that says why not, or null where nobody answered. */
function useOrderEnding() {
  const intl = useIntl();
  const { time, money } = useFormats();
  const orderWords = useOrderWords();
  const client = useApolloClient();
  // The visit's own deed fetches the stop anew. Asked twice at once, the older answer would stand.
  const { run, problem } = useDeed(closeWorkOrderDocument);
  const end = async ({ id, version, kind, what }: Order, { done, note, resolvesFinding }: End): Promise<string | null> => {
    const answer = await run({ input: { id, version, done, note: note.trim() || null, resolvesFinding: done && resolvesFinding } });
    if (!answer) return null;
    const name = orderWords({ kind, what });
    const { closeWorkOrder: told } = answer;
    switch (told.__typename) {
      case 'WorkOrder':
        return 'ended';
      case 'ChangedMeanwhile':
        await client.refetchQueries({ include: ['Stop'] });
        return intl.formatMessage({ id: 'field.done.changed' }, { name, by: told.changedBy ?? 'nobody', time: time(told.changedAt) });
      case 'ApprovalNeeded':
        return intl.formatMessage({ id: 'field.done.needsApproval' }, { name, cost: money(told.needed), limit: money(told.limit) });
    }
  };
  return { run: end, problem };
}
