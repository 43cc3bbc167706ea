import type { Offer } from './least-change.js';
import type { ControllerPlan } from './plan-controller.js';

/** The least change is entered where all else would better it by no more than this share. [–] */
const WORTH_ENTERING = 0.1;

/**
 * The offer that a crew is sent with: the least change where it does nearly as well as the full program, else the full program.
 *
 * @param plan - The plan. [–]
 * @returns One of its offers. [–]
 */
export function offerToEnter(plan: ControllerPlan): Offer {
  const { leastChange, full } = plan;
  return leastChange && leastChange.judgement.cost <= full.judgement.cost * (1 + WORTH_ENTERING) ? leastChange : full;
}
