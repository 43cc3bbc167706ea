import { useState } from 'react';
import { useIntl } from 'react-intl';
import { useDraft } from '../../../../offline/use-draft.js';
import { useSave } from '../../device/use-save.js';
import { useOrderWords } from '../../use-order-words.js';
import type { VisitHere } from '../use-visit.js';
import { amountOf, type MaterialDraft, materialsOf } from './materials.js';
import { type End, isDecidable } from './order-end.js';

interface Draft {
  readonly orders: Readonly<Record<string, End>>;
  readonly doneNote: string;
  readonly leftNote: string;
  /** as typed; empty where the time on site stands */
  readonly minutes: string;
  readonly materials: readonly MaterialDraft[];
}

interface Order {
  readonly id: string;
  readonly version: number;
  readonly kind: string;
  readonly what: string;
  readonly waterAgainOn?: string | null;
  readonly state: string;
}

interface Options {
  readonly stop: { readonly id: string; readonly workOrders: readonly Order[] };
  readonly now: () => Date;
  readonly visit: VisitHere;
}

export interface Closing {
  readonly draft: Draft;
  readonly change: (change: Partial<Draft>) => void;
  readonly changeOrder: (id: string, end: End) => void;
  readonly close: () => Promise<void>;
  /** What keeps the stop from being closed, as a sentence. */
  readonly words: string | null;
  readonly isAgain: boolean;
  readonly again: () => void;
}

const EMPTY: Draft = { orders: {}, doneNote: '', leftNote: '', minutes: '', materials: [] };

/** Ends a stop: each work order as the crew said, then the visit. All of it is on the phone when the page says closed. */
export function useClosing({ stop, now, visit: { visit, begin } }: Options): Closing {
  const save = useSave();
  const intl = useIntl();
  const orderWords = useOrderWords();
  const [kept, setDraft, clear] = useDraft<Draft>(`done.${stop.id}`, EMPTY);
  const draft = { ...EMPTY, ...kept };
  const [words, setWords] = useState<string | null>(null);
  const [isAgain, setAgain] = useState(false);
  const open = stop.workOrders.filter(({ state }) => isDecidable(state));
  const endOrder = (order: Order, { done, note, resolvesFinding }: End) => {
    const body = {
      workOrderId: order.id,
      version: order.version,
      done,
      note: note.trim() || null,
      resolvesFinding: done && resolvesFinding,
    };
    return save({ kind: 'end-order', payloadVersion: 1, subject: `end ${order.id}`, words: orderWords(order), body: JSON.stringify(body) });
  };
  const saveAll = async (): Promise<void> => {
    const visitId = await begin();
    if (!visitId) return;
    for (const order of open) {
      const end = draft.orders[order.id];
      if (end && !(await endOrder(order, end))) return;
    }
    const body = closingOf(draft, { visitId, arrivedAt: visit?.arrivedAt ?? null, closedAt: now() });
    const saved = await save({
      kind: 'close-visit',
      payloadVersion: 1,
      subject: `close ${visitId}`,
      words: intl.formatMessage({ id: 'field.what.end' }),
      body: JSON.stringify(body),
    });
    if (!saved) return;
    clear();
    setAgain(false);
  };
  const close = async (): Promise<void> => {
    const undecided = open.find(({ id }) => !draft.orders[id]);
    const wrong = amountOf(draft.minutes) === undefined;
    setWords(
      undecided
        ? intl.formatMessage({ id: 'field.done.undecided' }, { what: orderWords(undecided) })
        : wrong
          ? intl.formatMessage({ id: 'field.done.wrongMinutes' }, { found: draft.minutes })
          : null,
    );
    if (!undecided && !wrong) await saveAll();
  };
  return {
    draft,
    change: (change) => setDraft({ ...draft, ...change }),
    changeOrder: (id, end) => setDraft({ ...draft, orders: { ...draft.orders, [id]: end } }),
    close,
    words,
    isAgain,
    again: () => setAgain(true),
  };
}

interface Ended {
  readonly visitId: string;
  readonly arrivedAt: string | null;
  readonly closedAt: Date;
}

const MINUTE_MS = 60_000;

/** The minutes of work are those that were typed, else the time on site, as if one person had worked. */
function closingOf({ doneNote, leftNote, minutes, materials }: Draft, { visitId, arrivedAt, closedAt }: Ended) {
  const onSite = arrivedAt ? Math.max(0, Math.round((closedAt.getTime() - Date.parse(arrivedAt)) / MINUTE_MS)) : null;
  return {
    visitId,
    // A clock that was set back meanwhile must not end a visit before it began.
    closedAt: new Date(Math.max(closedAt.getTime(), arrivedAt ? Date.parse(arrivedAt) : 0)).toISOString(),
    doneNote: doneNote.trim() || null,
    leftNote: leftNote.trim() || null,
    workedMinutes: amountOf(minutes) ?? onSite,
    materials: materialsOf(materials),
  };
}
