import { useIntl } from 'react-intl';
import type { Operation } from '../../../../offline/operation.js';
import { useOutbox, usePhone } from '../../../../offline/PhoneProvider.js';
import { useSave } from '../../device/use-save.js';
import type { VisitHere } from '../use-visit.js';

/** What a zone walk can find, in the words of the records. */
export const SEEN_KINDS = ['broken head', 'leak', 'clogged', 'overspray', 'coverage', 'wilting'] as const;
export type SeenKind = (typeof SEEN_KINDS)[number] | 'other';

export interface GivenNote {
  readonly kind: string;
  readonly count: number;
  readonly word?: string | null;
  readonly repaired: boolean;
}

export interface Seen {
  readonly count: number;
  readonly repaired: boolean;
  readonly word: string;
}

export interface ZoneNotes {
  readonly of: (kind: SeenKind) => Seen;
  /** The fewest that may be told: what was sent cannot be taken back, only told anew. */
  readonly leastOf: (kind: SeenKind) => number;
  readonly change: (kind: SeenKind, seen: Partial<Seen>) => void;
}

interface Options {
  readonly zoneId: string;
  readonly name: string;
  readonly notes: readonly GivenNote[];
  readonly visit: VisitHere;
}

const NONE: Seen = { count: 0, repaired: false, word: '' };
/** A word is still being written so long; other taps rest sooner. */
const WORD_REST_MS = 4000;

/** What was seen in a zone: saved on the phone at every tap, always the whole count. */
export function useZoneNotes({ zoneId, name, notes, visit: { visit, begin } }: Options): ZoneNotes {
  const intl = useIntl();
  const save = useSave();
  const phone = usePhone();
  const { operations } = useOutbox();
  const subjectOf = (visitId: string, kind: string): string => `zone ${visitId} ${zoneId} ${kind}`;
  const here = (kind: string): Operation | null => {
    const subject = visit && subjectOf(visit.id, kind);
    return operations.findLast((one) => one.subject === subject && one.state !== 'refused') ?? null;
  };
  const of = (kind: string): Seen => {
    const last = here(kind);
    const note = last ? (JSON.parse(last.body) as GivenNote) : notes.find((one) => one.kind === kind);
    return note ? { count: note.count, repaired: note.repaired, word: note.word ?? '' } : NONE;
  };
  const isSent = (kind: string): boolean => here(kind)?.hasLeft ?? notes.some((one) => one.kind === kind);
  const change = async (kind: SeenKind, seen: Partial<Seen>): Promise<void> => {
    const { count, repaired, word } = { ...of(kind), ...seen };
    const visitId = await begin();
    if (!visitId) return;
    const subject = subjectOf(visitId, kind);
    if (count === 0) return phone.happen({ type: 'withdrawn', subject });
    const body = { visitId, zoneId, kind, count, repaired, word: word || null };
    const words = intl.formatMessage({ id: 'field.what.zone' }, { zone: name });
    const rest = seen.word === undefined ? {} : { restMs: WORD_REST_MS };
    await save({ kind: 'note-zone', payloadVersion: 1, subject, words, body: JSON.stringify(body) }, rest);
  };
  return {
    of,
    leastOf: (kind) => (isSent(kind) ? 1 : 0),
    change: (kind, seen) => void change(kind, seen),
  };
}
