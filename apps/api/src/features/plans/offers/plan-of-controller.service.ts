import type { ControllerPlan } from '@rillbook/irrigation/planning/offers/plan-controller.js';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { type Gathered, gatherPlan, type PlannableController, type RulesInstead } from '../gather/plan-input.service.js';
import { planner } from './planner.js';

/** A controller's month planned, with what it was planned from; no plan where something is missing. */
export interface PlannedMonth {
  readonly gathered: Gathered;
  readonly plan: ControllerPlan | null;
}

/** Plans a controller for a month; others are served before the next one is planned. */
export async function planOfController(
  tx: OrganizationTransaction,
  controller: PlannableController,
  month: string,
  rulesInstead?: RulesInstead,
): Promise<PlannedMonth> {
  const gathered = await gatherPlan(tx, controller, month, rulesInstead);
  const plan = gathered.input && (await planner.plan(gathered.input));
  if (plan?.refused)
    return { gathered: { input: null, reason: { code: 'NOTHING_KEEPS_ALL', details: { broken: plan.refused } } }, plan: null };
  return { gathered, plan };
}
