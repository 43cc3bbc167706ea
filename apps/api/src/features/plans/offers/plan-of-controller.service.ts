import type { ControllerPlan } from '@rillbook/irrigation/planning/offers/plan-controller.js';
import type { PlanInput } from '@rillbook/irrigation/planning/plan-input.js';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { type Gathered, gatherPlan, type PlannableController, type RulesInstead } from '../gather/plan-input.service.js';
import { planner } from './planner.js';

/** A controller's month planned, with what it was planned from; no plan where something is missing. */
export interface PlannedMonth {
  readonly gathered: Gathered;
  readonly plan: ControllerPlan | null;
  /** what no program gives; also where for its sake nothing can be given out */
  readonly impossible: ControllerPlan['impossible'];
}

/**
 * Plans a controller for a month; others are served before the next one is planned. While the thread plans, a transaction that has written
 * nothing holds no connection.
 */
export async function planOfController(
  tx: OrganizationTransaction,
  controller: PlannableController,
  month: string,
  rulesInstead?: RulesInstead,
): Promise<PlannedMonth> {
  const gathered = await gatherPlan(tx, controller, month, rulesInstead);
  const plan = gathered.input && (await planned(tx, gathered.input));
  const impossible = plan?.impossible ?? [];
  if (plan?.refused) {
    const reason = { code: 'NOTHING_KEEPS_ALL' as const, details: { broken: plan.refused } };
    return { gathered: { input: null, reason }, plan: null, impossible };
  }
  return { gathered, plan, impossible };
}

async function planned(tx: OrganizationTransaction, month: PlanInput): Promise<ControllerPlan> {
  if (!planner.knows({ month, year: null })) await tx.rest();
  return planner.plan(month);
}

/**
 * Plans controllers for a deed, before it writes anything. What follows reads all anew and plans from that: the same question has its answer
 * already, and where something has changed meanwhile it is another question.
 */
export async function planAhead(tx: OrganizationTransaction, controllers: readonly PlannableController[], month: string): Promise<void> {
  for (const controller of controllers) await planOfController(tx, controller, month);
  await readAnew(tx);
}

/** What was read is read again, unless this transaction has written: then what is kept belongs to what it wrote. */
export async function readAnew(tx: OrganizationTransaction): Promise<void> {
  if (await tx.rest()) tx.kept.clear();
}
