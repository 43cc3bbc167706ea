import type { RuleBreach } from '../../rules/rule-breach.js';

/** What settings do to a zone in the month; lost is below the roots, run off, and in filling slow lines. [L] */
export interface ZoneJudgement {
  readonly zoneId: string;
  readonly station: number;
  readonly usedLitres: number;
  readonly neededLitres: number;
  readonly unmetLitres: number;
  readonly wastedLitres: number;
  readonly ranOffLitres: number;
}

/** A limit of timer, window, meter or main that settings do not keep. */
export type BrokenLimit =
  | 'more programs than it holds'
  | 'more starts than it holds'
  | 'minutes above the longest'
  | 'percent above the largest'
  | 'outside the hours'
  | 'more flow than meter and main carry'
  | 'stations it has not';

/** Settings replayed over the month: zone by zone, in all, when watering begins and ends, and what is not kept. */
export interface PlanJudgement {
  readonly zones: readonly ZoneJudgement[];
  readonly usedLitres: number;
  readonly neededLitres: number;
  readonly unmetLitres: number;
  readonly wastedLitres: number;
  readonly ranOffLitres: number;
  readonly keyPresses: number;
  readonly cost: number;
  /** Minutes after midnight; null where nothing runs. [min] */
  readonly beginsAt: number | null;
  readonly endsAt: number | null;
  readonly breaches: readonly RuleBreach[];
  readonly limits: readonly BrokenLimit[];
}

/**
 * Whether settings keep every rule and limit, and nothing runs off.
 *
 * @param judgement - The settings, judged. [L]
 * @returns True when they may be given out. [–]
 */
export function keepsAll(judgement: PlanJudgement): boolean {
  const { breaches, limits, ranOffLitres } = judgement;
  return breaches.length === 0 && limits.length === 0 && ranOffLitres < 1e-6;
}
