import { judgePlan } from '../planning/judge/judge-plan.js';
import type { PlanJudgement } from '../planning/judge/plan-judgement.js';
import { leastChange, type Offer } from '../planning/offers/least-change.js';
import type { PlanInput } from '../planning/plan-input.js';
import type { Program } from '../settings/settings-fact.js';
import { stationsWithoutZone } from './stations-without-zone.js';

/** What is carried to a controller: all that a plan asks for but what is set there, which is seen on the spot. */
export type PlanGround = Omit<PlanInput, 'present'>;

/** The form of a ground as it is carried. Raise it when a plan asks for something new: a ground of another form is not planned on. */
export const GROUND_FORM = 1;

/** The least to enter on a controller as it was found, or why nothing can be said. */
export type ChangeFromFound =
  | { readonly kind: 'enter'; readonly offer: Offer; readonly asFound: PlanJudgement }
  | { readonly kind: 'stations without zone'; readonly stations: readonly number[] }
  | { readonly kind: 'nothing keeps all' };

/**
 * The least change from what was found on a controller: what a crew enters on the spot. It is what a plan of the same month offers as its
 * least change once the found settings are on record.
 *
 * @param ground - What was carried to the controller. [code]
 * @param found - The programs as they were found. [code]
 * @returns The change with what it does and what would be without it; or the reason why there is none. [code]
 */
export function changeFromFound(ground: PlanGround, found: readonly Program[]): ChangeFromFound {
  const stations = stationsWithoutZone(ground.zones, found);
  if (stations.length > 0) return { kind: 'stations without zone', stations };
  const input = { ...ground, present: found };
  const offer = leastChange(input);
  return offer ? { kind: 'enter', offer, asFound: judgePlan(input, found) } : { kind: 'nothing keeps all' };
}
