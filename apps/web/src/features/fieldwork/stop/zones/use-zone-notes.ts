import { useRef, useState } from 'react';
import { useIntl } from 'react-intl';
import { useOutbox, usePhone } from '../../../../offline/PhoneProvider.js';
import { saidOver } from '../../../../offline/outbox.js';
import { uuidV7 } from '../../../../offline/uuid-v7.js';
import { useSave } from '../../device/use-save.js';
import type { VisitHere } from '../use-visit.js';

/** What a zone walk can find, in the words of the records. */
export const SEEN_KINDS = ['broken head', 'leak', 'clogged', 'overspray', 'coverage', 'wilting'] as const;
export type SeenKind = (typeof SEEN_KINDS)[number] | 'other';

export interface GivenNote {
  readonly id: string;
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

/** What is said and not yet seen in what the phone holds. */
interface Said extends Seen {
  /** The note's own name, where its kind does not name it: whatever its word becomes, it stays the same note. */
  readonly noteId: string | null;
  /** Whether the phone has it: it stands here until it is seen there. */
  readonly isKept: boolean;
  /** How long it rests before it is sent; undefined as long as other taps. [ms] */
  readonly restMs: number | undefined;
}

const isSame = (said: Seen, { count, repaired, word }: Seen): boolean =>
  said.count === count && said.repaired === repaired && said.word === word;

const wordsOf = (note: GivenNote | null) => note && { count: note.count, word: note.word ?? null, repaired: note.repaired };

export interface ZoneNotes {
  readonly of: (kind: SeenKind) => Seen;
  /** The fewest that may be told: what was sent cannot be taken back, only told anew. */
  readonly leastOf: (kind: SeenKind) => number;
  readonly change: (kind: SeenKind, seen: Partial<Seen>) => void;
}

interface Options {
  readonly zoneId: string;
  readonly name: string;
  /** What the server told, with what was saved here since laid over it. */
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
  // What is on the screen follows the fingers; what is on the phone follows a moment later.
  const [said, setSaid] = useState<Readonly<Partial<Record<SeenKind, Said>>>>({});
  const latest = useRef(new Map<SeenKind, Said>());
  const subjectOf = (visitId: string, kind: string): string => `zone ${visitId} ${zoneId} ${kind}`;
  const noteOf = (kind: SeenKind): GivenNote | null => notes.find((one) => one.kind === kind) ?? null;
  const told = (kind: SeenKind): Seen => {
    const note = noteOf(kind);
    return note ? { count: note.count, repaired: note.repaired, word: note.word ?? '' } : NONE;
  };
  const of = (kind: SeenKind): Seen => said[kind] ?? told(kind);
  const drop = (kind: SeenKind): void => setSaid(({ [kind]: _, ...others }) => others);
  const seenThere = ([...SEEN_KINDS, 'other'] as const).find((kind) => said[kind]?.isKept && isSame(said[kind], told(kind)));
  if (seenThere) drop(seenThere);
  const hasLeft = (kind: SeenKind): boolean => {
    const subject = visit && subjectOf(visit.id, kind);
    const own = operations.findLast((one) => one.subject === subject && one.state !== 'refused');
    return own?.hasLeft ?? noteOf(kind) !== null;
  };
  const keep = async (kind: SeenKind, { noteId, count, repaired, word, restMs }: Said): Promise<boolean> => {
    const visitId = await begin();
    if (!visitId) return false;
    const subject = subjectOf(visitId, kind);
    if (count === 0) {
      await phone.happen({ type: 'withdrawn', subject });
      return true;
    }
    const over = saidOver(phone.outbox, subject, wordsOf(noteOf(kind)));
    const body = { visitId, zoneId, kind, count, repaired, word: word || null, ...(noteId && { noteId }), over };
    const words = intl.formatMessage({ id: 'field.what.zone' }, { zone: name });
    const rest = restMs === undefined ? {} : { restMs };
    return (await save({ kind: 'note-zone', payloadVersion: 1, subject, words, body: JSON.stringify(body) }, rest)) !== null;
  };
  /** Fingers that are faster than the phone are written once for all that it missed: what was said last. */
  const keepLatest = async (kind: SeenKind): Promise<void> => {
    for (;;) {
      const now = latest.current.get(kind);
      if (!now || phone.isShut) return;
      const isKept = await keep(kind, now);
      if (latest.current.get(kind) !== now) continue;
      latest.current.delete(kind);
      return isKept ? setSaid((others) => ({ ...others, [kind]: { ...now, isKept } })) : drop(kind);
    }
  };
  const change = (kind: SeenKind, seen: Partial<Seen>): void => {
    const noteId = kind === 'other' ? (said.other?.noteId ?? noteOf(kind)?.id ?? uuidV7(Date.now())) : null;
    const { count, repaired, word } = { ...of(kind), ...seen };
    const restMs = seen.word === undefined ? undefined : WORD_REST_MS;
    const next: Said = { count, repaired, word, noteId, isKept: false, restMs };
    const isUnderWay = latest.current.has(kind);
    latest.current.set(kind, next);
    setSaid((others) => ({ ...others, [kind]: next }));
    if (!isUnderWay) void keepLatest(kind);
  };
  return { of, leastOf: (kind) => (hasLeft(kind) ? 1 : 0), change };
}
