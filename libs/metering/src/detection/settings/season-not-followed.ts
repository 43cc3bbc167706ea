import type { FindingCandidate } from '../finding-candidate.js';

/** Need of four weeks is compared: it comes in lumps when the root zone is empty, and rain of one week is no season. [d] */
const WINDOW_DAYS = 28;

/** Settings that are younger have not seen a season change: common practice. [d] */
const FEWEST_DAYS = 42;

/** Need that has changed by less is within what a percent adjust of ten points, set a little wide, covers. An assumption. */
const LEAST_CHANGE = 0.2;

/** Need by local day of the zones that the settings water, and when these were last changed. */
export interface SeasonInput {
  readonly firstDay: number;
  /** Gross need by day; NaN is not known. [L] */
  readonly neededLitres: Float64Array;
  /** Local day of the last change of programs or percent. */
  readonly changedDay: number;
  /** The last complete day. */
  readonly lastDay: number;
}

/** Settings that were left as they were while the need changed: the cause of an over-programmed or under-programmed finding. */
export interface SeasonNotFollowed {
  readonly kind: 'over-programmed' | 'under-programmed';
  readonly unchangedDays: number;
  /** Need now against need then: -0.4 is two fifths less. [–] */
  readonly needChange: number;
}

/**
 * Whether settings were not changed while the season changed the need.
 *
 * change = need of the last four weeks / need of the four weeks about the last change of settings − 1
 *
 * @param input - Need by day, and when settings were last changed. [L]
 * @returns For how long they are unchanged and by how much the need fell or rose; null where they are young, the need is much the same or not
 * known. [d] and [–]
 */
export function seasonNotFollowed(input: SeasonInput): SeasonNotFollowed | null {
  const { changedDay, lastDay } = input;
  const unchangedDays = lastDay - changedDay + 1;
  if (unchangedDays < FEWEST_DAYS) return null;
  const then = meanOf(input, changedDay - WINDOW_DAYS / 2, changedDay + WINDOW_DAYS / 2);
  const now = meanOf(input, lastDay - WINDOW_DAYS + 1, lastDay + 1);
  if (then === null || now === null || then <= 0) return null;
  const needChange = now / then - 1;
  if (Math.abs(needChange) < LEAST_CHANGE) return null;
  return { kind: needChange < 0 ? 'over-programmed' : 'under-programmed', unchangedDays, needChange };
}

// Mean of a span's known days; half of them must be known.
function meanOf({ firstDay, neededLitres }: SeasonInput, from: number, until: number): number | null {
  const known = neededLitres.slice(Math.max(0, from - firstDay), Math.max(0, until - firstDay)).filter((litres) => !Number.isNaN(litres));
  return known.length < WINDOW_DAYS / 2 ? null : known.reduce((sum, litres) => sum + litres, 0) / known.length;
}

/**
 * A finding about settings, with the season as its cause where the season explains it.
 *
 * @param candidate - The finding. [code]
 * @param season - What the season did; null where settings followed it. [code]
 * @returns The finding; `says` has `unchangedDays` and `needChangePercent` besides where it is of the kind that the season makes. [code]
 */
export function withSeason<Candidate extends FindingCandidate>(candidate: Candidate, season: SeasonNotFollowed | null): Candidate {
  if (season === null || candidate.kind !== season.kind) return candidate;
  const { unchangedDays, needChange } = season;
  const details = { ...candidate.says.details, unchangedDays, needChangePercent: Math.round(100 * needChange) };
  return { ...candidate, says: { ...candidate.says, details } };
}
