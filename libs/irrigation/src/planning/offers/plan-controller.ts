import type { BreachKind } from '../../rules/rule-breach.js';
import { judgePlan } from '../judge/judge-plan.js';
import { type BrokenLimit, keepsAll, type PlanJudgement } from '../judge/plan-judgement.js';
import type { PlanInput } from '../plan-input.js';
import { FOR_AN_ANSWER } from '../search/effort.js';
import { fullProgram, planGround } from './full-program.js';
import { type Impossible, impossibleNeeds } from './impossible.js';
import { leastChange, type Offer } from './least-change.js';

/** A controller's month planned: what is set, two offers, how far the full program can be from the best, and what cannot be met. */
export interface ControllerPlan {
  readonly present: PlanJudgement | null;
  readonly leastChange: Offer | null;
  readonly full: Offer;
  /** Zones, programs, days and minutes are at most this share dearer than the best there is. [–] */
  readonly gapShare: number;
  /** Cost that fitting start times and soaks into the hours added, as a share. [–] */
  readonly layoutShare: number;
  readonly impossible: readonly Impossible[];
  /** What the programs found do not keep, where no others do: then nothing is to be watered and nothing given out; else null. */
  readonly refused: readonly Refusal[] | null;
}

/** A rule or limit that programs do not keep, or that water runs off. */
export type Refusal = BrokenLimit | BreachKind | 'water runs off';

/**
 * Plans a controller for a month: the least change and the full program, both replayed, and what rules or hardware make impossible.
 *
 * Of programs that keep every rule and limit the cheapest is the full program: never dearer than what is set now. A timer whose resolution
 * nobody has said is taken to count whole minutes.
 *
 * @param given - The controller, its zones with their need, rules, hours and weights. [code]
 * @returns The plan. [–]
 */
export function planController(given: PlanInput): ControllerPlan {
  const input: PlanInput = { ...given, traits: { ...given.traits, minuteStep: given.traits.minuteStep ?? 1 } };
  const left = { ...FOR_AN_ANSWER };
  const found = fullProgram(input, planGround(input), left);
  const searched: Offer = { kind: 'full', programs: found.programs, judgement: judgePlan(input, found.programs) };
  const present = input.present ? judgePlan(input, input.present) : null;
  const least = leastChange(input);
  const asSet: readonly Offer[] =
    present && input.present && keepsAll(present) ? [{ kind: 'as set', programs: input.present, judgement: present }] : [];
  const others = [...asSet, ...(least ? [least] : [])];
  const keeping = [searched, ...others].filter(({ judgement }) => keepsAll(judgement));
  const full = keeping.length
    ? keeping.reduce((best, offer) => (offer.judgement.cost < best.judgement.cost ? offer : best))
    : { kind: 'full' as const, programs: [], judgement: judgePlan(input, []) };
  return {
    present,
    leastChange: least,
    full,
    gapShare: shareOf(found.costBeforeLayout - found.bound, found.costBeforeLayout),
    layoutShare: shareOf(found.cost - found.costBeforeLayout, found.cost),
    impossible: impossibleNeeds(input, full.judgement, left),
    refused: keeping.length ? null : refusalsOf(searched.judgement),
  };
}

function refusalsOf({ limits, breaches, ranOffLitres }: PlanJudgement): readonly Refusal[] {
  return [...new Set<Refusal>([...limits, ...breaches.map(({ kind }) => kind), ...(ranOffLitres > 0 ? ['water runs off' as const] : [])])];
}

function shareOf(part: number, whole: number): number {
  return whole > 0 ? Math.max(0, part / whole) : 0;
}
