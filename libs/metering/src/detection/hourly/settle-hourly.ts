import type { Episode } from '../evidence/episode.js';
import type { FindingKind } from '../finding-candidate.js';

/** Kinds that say more of the same water than a general unexplained use, the surest first. */
const SAY_MORE: readonly FindingKind[] = ['steady flow', 'off-schedule run', 'zone flow changed'];

/** Litres are alike when the one is at least this share of the other. Common practice, no source. */
const ALIKE = 0.4;

/** Days by which one may begin before the other and still be of one cause: a sum takes its time to pass its decision. */
const APART_DAYS = 3;

/**
 * Leaves one episode for one cause: a general unexplained use that is the same water as a finding that says more goes, where that was told no
 * later. What is told more of later becomes that (`settleEpisodes`), and keeps the time at which it was told first.
 *
 * The same water: same meter, times that overlap, litres alike.
 *
 * @param episodes - Episodes of hourly detection, of one or more meters. [code]
 * @returns Those that remain, in their order. [code]
 */
export function settleHourly(episodes: readonly Episode[]): readonly Episode[] {
  return episodes.filter((one) => one.kind !== 'unexplained use' || !episodes.some((other) => saysMore(other, one)));
}

function saysMore(other: Episode, general: Episode): boolean {
  if (!SAY_MORE.includes(other.kind) || other.meterId !== general.meterId || !overlap(other, general)) return false;
  if (other.openedLocalDay > general.openedLocalDay) return false;
  const [a, b] = [other.litres ?? 0, general.litres ?? 0];
  return Math.min(a, b) >= ALIKE * Math.max(a, b);
}

function overlap(one: Episode, other: Episode): boolean {
  const end = ({ clearedLocalDay }: Episode) => (clearedLocalDay ?? Number.POSITIVE_INFINITY) + APART_DAYS;
  return one.openedLocalDay <= end(other) && other.openedLocalDay <= end(one);
}
