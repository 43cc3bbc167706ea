import { useState } from 'react';
import { type IntlShape, useIntl } from 'react-intl';
import { usePhone } from '../../../../offline/PhoneProvider.js';
import { saidOver } from '../../../../offline/outbox.js';
import { useDraft } from '../../../../offline/use-draft.js';
import { useSave } from '../../device/use-save.js';
import { useOrderWords } from '../../use-order-words.js';
import type { VisitHere } from '../use-visit.js';
import { amountOf, draftsOf, type MaterialDraft, materialsOf, wrongMaterial } from './materials.js';
import { type End, isDecidable } from './order-end.js';

interface Draft {
  readonly orders: Readonly<Record<string, End>>;
  readonly doneNote: string;
  readonly leftNote: string;
  /** as typed; empty where the time on site stands */
  readonly minutes: string;
  readonly materials: readonly MaterialDraft[];
  /** the ending that was on the screen when this one was begun */
  readonly over: Closed | null;
}

interface Order {
  readonly id: string;
  readonly version: number;
  readonly kind: string;
  readonly what: string;
  readonly waterAgainOn?: string | null;
  readonly state: string;
}

/** A visit as it was closed. */
interface Closed {
  readonly closedAt: string;
  readonly doneNote?: string | null;
  readonly leftNote?: string | null;
  readonly workedMinutes?: number | null;
  readonly materials: Parameters<typeof draftsOf>[0];
}

interface Options {
  readonly stop: {
    readonly id: string;
    readonly workOrders: readonly Order[];
    readonly visit?: (Omit<Closed, 'closedAt'> & { readonly closedAt?: string | null }) | null;
  };
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

const EMPTY: Draft = { orders: {}, doneNote: '', leftNote: '', minutes: '', materials: [], over: null };

const endingOf = ({ closedAt, doneNote = null, leftNote = null, workedMinutes = null, materials }: Closed): Closed => ({
  ...{ closedAt, doneNote, leftNote, workedMinutes },
  materials: materials.map(({ name, count, unit = null }) => ({ name, count, unit })),
});

/** What a closing begins from: said again, it begins from what was said. */
const begunFrom = (closed: Closed | null): Draft =>
  closed
    ? {
        orders: {},
        doneNote: closed.doneNote ?? '',
        leftNote: closed.leftNote ?? '',
        minutes: typeof closed.workedMinutes === 'number' ? String(closed.workedMinutes) : '',
        materials: draftsOf(closed.materials),
        over: endingOf(closed),
      }
    : EMPTY;

/** Ends a stop: each work order as the crew said, then the visit. All of it is on the phone when the page says closed. */
export function useClosing({ stop, now, visit: { visit, begin } }: Options): Closing {
  const save = useSave();
  const phone = usePhone();
  const intl = useIntl();
  const orderWords = useOrderWords();
  const closed = stop.visit?.closedAt ? { ...stop.visit, closedAt: stop.visit.closedAt } : null;
  const [kept, setDraft, clear] = useDraft<Draft>(`done.${stop.id}${closed ? '.again' : ''}`, begunFrom(closed));
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
    const body = closingOf(draft, { visitId, arrivedAt: visit?.arrivedAt ?? null, closedAt: closed ? new Date(closed.closedAt) : now() });
    const subject = `close ${visitId}`;
    const over = saidOver(phone.outbox, subject, draft.over);
    const saved = await save({
      kind: 'close-visit',
      payloadVersion: 1,
      subject,
      words: intl.formatMessage({ id: 'field.what.end' }),
      body: JSON.stringify({ ...body, over }),
    });
    if (!saved) return;
    clear();
    setAgain(false);
  };
  const close = async (): Promise<void> => {
    const wrong = wrongIn(intl, draft, undecidedIn(open, draft, orderWords));
    setWords(wrong);
    if (wrong === null) await saveAll();
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

const undecidedIn = (open: readonly Order[], { orders }: Draft, wordsOf: (order: Order) => string): string | null => {
  const found = open.find(({ id }) => !orders[id]);
  return found ? wordsOf(found) : null;
};

/** What keeps a stop from being closed, as a sentence: nothing that was typed is guessed. */
function wrongIn(intl: IntlShape, { minutes, materials }: Draft, undecided: string | null): string | null {
  if (undecided) return intl.formatMessage({ id: 'field.done.undecided' }, { what: undecided });
  const material = wrongMaterial(materials);
  if (material) return intl.formatMessage({ id: 'field.materials.wrongCount' }, { found: material.count, name: material.name.trim() });
  return amountOf(minutes) === undefined ? intl.formatMessage({ id: 'field.done.wrongMinutes' }, { found: minutes }) : null;
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
