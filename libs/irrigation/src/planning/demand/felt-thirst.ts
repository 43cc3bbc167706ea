/** Shares of its need that a zone can lack before each litre more counts for more, and how much it then counts. No source: a judgement. */
const WORSE_FROM = 0.25;
const DYING_FROM = 0.5;
const WORSE = 2;
const DYING = 8;

/** What a litre counts at most. [–] */
export const DIREST_THIRST = DYING;

/**
 * What is unmet as the plants feel it: a little less than the need is borne, a zone left dry dies. So that scarce hours are shared out, and
 * never given to the largest zones alone.
 *
 * Each part of the need that is unmet counts once, from a quarter of it on twice, from half of it on eight times: convex.
 *
 * @param unmet - What stays unmet. [L] or [min]
 * @param need - The need, over the same days. [L] or [min]
 * @returns Unmet, weighted. [L] or [min]
 */
export function feltThirst(unmet: number, need: number): number {
  return unmet + (WORSE - 1) * Math.max(0, unmet - WORSE_FROM * need) + (DYING - WORSE) * Math.max(0, unmet - DYING_FROM * need);
}
