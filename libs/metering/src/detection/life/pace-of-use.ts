/** The windows: a short one that shows that it goes on, a long one that shows that it matters. [d] */
export const SHORT_DAYS = 3;
export const LONG_DAYS = 14;

/**
 * How fast is too fast, in allowed water of the same days: three times over the short window while the long one is above one and a half asks
 * for somebody now; more than allowed over the long one is watched. Assumptions, from the two windows of the Site Reliability Workbook,
 * chapter 5, 'Multiwindow, Multi-Burn-Rate Alerts'.
 */
const FAST_SHORT = 3;
const FAST_LONG = 1.5;
const WATCHED_LONG = 1;

/** What to make of a pace. */
export type PaceVerdict = 'act now' | 'watch' | 'within';

/** How fast water is used, in shares of what was allowed on the same days. [–] */
export interface PaceOfUse {
  readonly shortShare: number;
  readonly longShare: number;
  readonly verdict: PaceVerdict;
}

/** A day's water and what was allowed for it; null where either is not known. [L] */
export interface DayOfUse {
  readonly usedL: number | null;
  readonly allowedL: number | null;
}

/**
 * How fast a place uses its allowance, over three days and over fourteen: one loud day alone is not fast, and neither is what is over.
 *
 * @param days - Fourteen days in order of time, the newest last. [L]
 * @returns The shares and what to make of them; null where a day is not known or nothing was allowed in one of the windows. [–]
 */
export function paceOfUse(days: readonly DayOfUse[]): PaceOfUse | null {
  if (days.length < LONG_DAYS) return null;
  const longShare = shareOf(days.slice(-LONG_DAYS));
  const shortShare = shareOf(days.slice(-SHORT_DAYS));
  return longShare === null || shortShare === null ? null : { shortShare, longShare, verdict: verdictOf(shortShare, longShare) };
}

function shareOf(days: readonly DayOfUse[]): number | null {
  let [used, allowed] = [0, 0];
  for (const { usedL, allowedL } of days) {
    if (usedL === null || allowedL === null) return null;
    used += usedL;
    allowed += allowedL;
  }
  return allowed > 0 ? used / allowed : null;
}

function verdictOf(shortShare: number, longShare: number): PaceVerdict {
  if (shortShare >= FAST_SHORT && longShare >= FAST_LONG) return 'act now';
  return longShare > WATCHED_LONG ? 'watch' : 'within';
}
