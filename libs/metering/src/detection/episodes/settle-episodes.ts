import { dateOfDayNumber } from '@rillbook/irrigation/calendar/local-date.js';
import type { FindingKind } from '../finding-candidate.js';
import type { Episode } from '../evidence/episode.js';

/** Litres are alike when the one is at least this share of the other. Common practice, no source. */
const ALIKE = 0.4;

/** Two kinds of evidence tell the end of one thing and the beginning of another at most so far apart: a reading and a half. [d] */
const NEAR_DAYS = 45;

/** Which kinds one cause can become as more is known of it. */
const BECOMES: Readonly<Partial<Record<FindingKind, readonly FindingKind[]>>> = {
  overwatered: ['over-programmed', 'unexplained use', 'steady flow', 'off-schedule run', 'zone flow changed'],
  'unexplained use': ['steady flow', 'off-schedule run', 'zone flow changed'],
  'doubtful reading': ['unexplained use', 'overwatered'],
};

/** Kinds that stay what they are when readings go on where the hours end. */
const REMAINS: Readonly<Partial<Record<FindingKind, readonly FindingKind[]>>> = {
  'steady flow': ['unexplained use', 'overwatered'],
  'off-schedule run': ['unexplained use', 'overwatered'],
  'zone flow changed': ['unexplained use', 'overwatered'],
};

/**
 * Leaves one episode for one cause, among everything that was found of a property.
 *
 * A cause that is seen with less first and with more later is one episode: it becomes the kind that says more, opened when it was first told.
 * A reading that was doubted and turned out right is the beginning of what it showed. A register that stands still and a meter that does not
 * deliver are one cause.
 *
 * @param episodes - All episodes of one property, in any order. [code]
 * @returns Those that remain, in the order in which they were opened; the same for every order of the input. [code]
 */
export function settleEpisodes(episodes: readonly Episode[]): readonly Episode[] {
  let settled = episodes.map(named).sort(inOrder);
  for (let pair = firstPair(settled); pair; pair = firstPair(settled)) {
    const { before, after } = pair;
    settled = [...settled.filter((one) => one !== before && one !== after), joined(before, after)].sort(inOrder);
  }
  return withKeysOfTheirOwn(settled);
}

const DATED = /\d{4}-\d\d-\d\d( \d+)?$/;

// A cause comes back under another date: one key for each time that it was there.
function named(episode: Episode): Episode {
  const { kind, causeKey, fromDate } = episode;
  if (DATED.test(causeKey)) return episode;
  return { ...episode, causeKey: `${causeKey.startsWith(kind) ? '' : `${kind} `}${causeKey} ${fromDate}` };
}

function withKeysOfTheirOwn(episodes: readonly Episode[]): readonly Episode[] {
  const seen = new Map<string, number>();
  return episodes.map((episode) => {
    const times = (seen.get(episode.causeKey) ?? 0) + 1;
    seen.set(episode.causeKey, times);
    return times === 1 ? episode : { ...episode, causeKey: `${episode.causeKey} ${times}` };
  });
}

function inOrder(one: Episode, other: Episode): number {
  const byTime = one.openedLocalDay - other.openedLocalDay;
  if (byTime !== 0) return byTime;
  const [a, b] = [keyOf(one), keyOf(other)];
  return a < b ? -1 : Number(a > b);
}

const keyOf = ({ kind, causeKey, fromDate, litres, clearedLocalDay }: Episode): string =>
  [kind, causeKey, fromDate, litres, clearedLocalDay].join('\t');

interface Pair {
  readonly before: Episode;
  readonly after: Episode;
}

// Of several that an episode may have become it is the one with the most water: the others are causes of their own.
function firstPair(episodes: readonly Episode[]): Pair | null {
  for (const before of episodes) {
    const [after] = episodes
      .filter((other) => other !== before && inOrder(before, other) < 0 && isOneCause(before, other))
      .sort((a, b) => (b.litres ?? 0) - (a.litres ?? 0));
    if (after) return { before, after };
  }
  return null;
}

function isOneCause(before: Episode, after: Episode): boolean {
  if (before.meterId === null || before.meterId !== after.meterId || !isNear(before, after)) return false;
  return isStill(before, after) || isStill(after, before) || (mayBecome(before, after) && isSameWater(before, after));
}

function mayBecome({ kind }: Episode, after: Episode): boolean {
  const kinds = [...(BECOMES[kind] ?? []), ...(REMAINS[kind] ?? [])];
  return kinds.includes(after.kind) && (after.kind !== 'zone flow changed' || isMore(after));
}

function isSameWater(before: Episode, after: Episode): boolean {
  if (before.kind === 'doubtful reading') return before.clearedLocalDay !== null && isFromDoubt(before, after);
  // Settings that became known explain what was overwatered, all of it or most.
  if (before.kind === 'overwatered' && after.kind === 'over-programmed') return before.clearedLocalDay !== null;
  return isAlike(before, after);
}

function isNear(before: Episode, after: Episode): boolean {
  return after.openedLocalDay <= (before.clearedLocalDay ?? Number.POSITIVE_INFINITY) + NEAR_DAYS;
}

// The register that is doubted for standing still is what a meter that does not deliver shows.
function isStill(doubted: Episode, lacking: Episode): boolean {
  const ends = ({ clearedLocalDay }: Episode) => clearedLocalDay ?? Number.POSITIVE_INFINITY;
  return (
    doubted.kind === 'doubtful reading' &&
    doubted.says.code === 'stuck' &&
    lacking.kind === 'not delivering' &&
    doubted.openedLocalDay <= ends(lacking) &&
    lacking.openedLocalDay <= ends(doubted)
  );
}

// The interval that the doubted reading ends is in the use that was found.
function isFromDoubt(doubted: Episode, found: Episode): boolean {
  return doubted.says.code !== 'stuck' && found.fromDate <= doubted.untilDate && found.openedLocalDay >= doubted.openedLocalDay;
}

function isAlike(one: Episode, other: Episode): boolean {
  const [a, b] = [one.litres ?? 0, other.litres ?? 0];
  return Math.min(a, b) >= ALIKE * Math.max(a, b);
}

const isMore = ({ says }: Episode): boolean => Number(says.details['ratio'] ?? 1) > 1;

function joined(before: Episode, after: Episode): Episode {
  const remains = REMAINS[before.kind]?.includes(after.kind) || (before.kind === 'not delivering' && after.kind === 'doubtful reading');
  const told = remains ? before : after;
  const earlier = [...(before.earlier ?? []), ...(told === after ? [{ kind: before.kind, openedLocalDay: before.openedLocalDay }] : [])];
  return {
    ...told,
    causeKey: before.causeKey,
    fromDate: before.fromDate < after.fromDate ? before.fromDate : after.fromDate,
    untilDate: before.untilDate > after.untilDate ? before.untilDate : after.untilDate,
    openedLocalDay: before.openedLocalDay,
    clearedLocalDay: lastOf(before, after),
    ...(earlier.length > 0 && { earlier }),
  };
}

// What became something else ends with it, unless it was seen since; of two that say the same at once, the longer.
function lastOf(before: Episode, after: Episode): number | null {
  if (after.clearedLocalDay === null) return null;
  const isOver = BECOMES[before.kind]?.includes(after.kind) ?? false;
  if (before.clearedLocalDay === null)
    return isOver && before.untilDate < dateOfDayNumber(after.clearedLocalDay) ? after.clearedLocalDay : null;
  return Math.max(before.clearedLocalDay, after.clearedLocalDay);
}
