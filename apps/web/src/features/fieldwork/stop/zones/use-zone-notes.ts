import { useCallback, useEffect, useRef, useState } from 'react';
import { useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import { useDeed } from '../../../../page/use-deed.js';
import { useDraft } from '../../device/use-draft.js';
import type { Sending } from '../../device/use-sending.js';
import type { VisitHere } from '../use-visit.js';

const noteZoneDocument = graphql(`
  mutation NoteZone($input: ZoneNoteInput!) {
    noteZone(input: $input) {
      id
      zoneId
      kind
      count
      word
      repaired
    }
  }
`);

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

type Notes = Readonly<Partial<Record<string, Seen>>>;

export interface ZoneNotes {
  readonly of: (kind: SeenKind) => Seen;
  /** The fewest that may be told: what was sent cannot be taken back, only told anew. */
  readonly leastOf: (kind: SeenKind) => number;
  readonly change: (kind: SeenKind, seen: Partial<Seen>) => void;
  readonly sendAgain: () => void;
  readonly problem: unknown;
}

interface Options {
  readonly zoneId: string;
  readonly name: string;
  readonly stopId: string;
  readonly notes: readonly GivenNote[];
  readonly visit: VisitHere;
  readonly send: Sending['send'];
}

const NONE: Seen = { count: 0, repaired: false, word: '' };
/** A second tap, or the way back from a wrong one, comes within this time. */
const PAUSE_MS = 900;

const told = (notes: readonly GivenNote[]): Notes =>
  Object.fromEntries(notes.map(({ kind, count, repaired, word }) => [kind, { count, repaired, word: word ?? '' }]));

const isSame = (a: Seen, b: Seen): boolean => a.count === b.count && a.repaired === b.repaired && a.word === b.word;

/** What was seen in a zone: kept here at every tap, sent a moment later, always the whole count. */
export function useZoneNotes({ zoneId, name, stopId, notes, visit: { begin }, send }: Options): ZoneNotes {
  const intl = useIntl();
  const server = told(notes);
  const [draft, setDraft] = useDraft<Notes>(`zone.${stopId}.${zoneId}`, {});
  const { run, problem } = useDeed(noteZoneDocument, { refetch: ['Stop'] });
  const [sent, setSent] = useState<Notes>(server);
  const of = (kind: string): Seen => draft[kind] ?? server[kind] ?? NONE;
  const sentOf = (kind: string): Seen => sent[kind] ?? server[kind] ?? NONE;
  const waiting = Object.keys(draft).filter((kind) => of(kind).count > 0 && !isSame(of(kind), sentOf(kind)));
  const what = intl.formatMessage({ id: 'field.what.zone' }, { zone: name });
  const sendAll = useCallback(
    (kinds: readonly string[], all: Notes) =>
      send(what, async () => {
        const visit = await begin();
        if (!visit) return null;
        for (const kind of kinds) {
          const { count, repaired, word } = all[kind] ?? NONE;
          const answer = await run({ input: { visitId: visit.id, zoneId, kind, count, repaired, word: word.trim() || null } });
          if (!answer) return null;
          setSent((before) => ({ ...before, [kind]: { count, repaired, word } }));
        }
        return true;
      }),
    [send, what, begin, run, zoneId],
  );
  const key = JSON.stringify(waiting.map((kind) => [kind, draft[kind]]));
  const latest = useRef({ sendAll, waiting, draft });
  useEffect(() => {
    latest.current = { sendAll, waiting, draft };
  });
  const flush = useCallback(() => {
    const { sendAll: deed, waiting: kinds, draft: all } = latest.current;
    if (kinds.length > 0) void deed(kinds, all);
  }, []);
  useEffect(() => {
    if (key === '[]') return;
    const timer = setTimeout(flush, PAUSE_MS);
    return () => clearTimeout(timer);
  }, [key, flush]);
  // The next zone may come before the pause is over.
  useEffect(() => flush, [flush]);
  return {
    of,
    leastOf: (kind) => (sentOf(kind).count > 0 ? 1 : 0),
    change: (kind, seen) => setDraft({ ...draft, [kind]: { ...of(kind), ...seen } }),
    sendAgain: flush,
    problem,
  };
}
