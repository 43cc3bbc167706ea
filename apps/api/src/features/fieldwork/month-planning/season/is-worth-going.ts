import { offerToEnter } from '@rillbook/irrigation/planning/offers/offer-to-enter.js';
import type { ControllerPlan } from '@rillbook/irrigation/planning/offers/plan-controller.js';

/** The least share of a month's need that new settings must put right before somebody drives there. Common practice. [–] */
const LEAST_SHARE = 0.1;

const misfit = ({ wastedLitres, unmetLitres }: { readonly wastedLitres: number; readonly unmetLitres: number }): number =>
  wastedLitres + unmetLitres;

/**
 * Whether a month's settings are worth a crew's way: what is set now breaks a rule, or the plan puts right more water than the organization's
 * own least and a tenth of the need.
 */
export function isWorthGoing(plan: ControllerPlan, leastLitres: number): boolean {
  const { present } = plan;
  if (!present) return false;
  const { judgement } = offerToEnter(plan);
  if (present.breaches.length > judgement.breaches.length) return true;
  return misfit(present) - misfit(judgement) >= Math.max(leastLitres, LEAST_SHARE * present.neededLitres);
}
