import { Injectable } from '@nestjs/common';
import { judgePlan } from '@rillbook/irrigation/planning/judge/judge-plan.js';
import type { ControllerPlan } from '@rillbook/irrigation/planning/offers/plan-controller.js';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { controllersOfProperty } from '../../portfolio/controllers/controllers-of-property.loader.js';
import { gatherPlan } from '../gather/plan-input.service.js';
import { planOfController } from '../offers/plan-of-controller.service.js';

/** A controller that breaks a rule as it is set now, and what it would best be set to. */
export interface Breaker {
  readonly controllerId: string;
  readonly propertyId: string;
  readonly plan: ControllerPlan;
}

/** Finds the controllers of some properties that break a rule in force in a month, each with its plan. */
@Injectable()
export class BreakersOfRules {
  async run(tx: OrganizationTransaction, propertyIds: readonly string[], month: string): Promise<Breaker[]> {
    const breakers: Breaker[] = [];
    for (const propertyId of propertyIds) {
      for (const row of await controllersOfProperty.of(tx).load(propertyId)) {
        const { input } = await gatherPlan(tx, row, month);
        if (!input?.present || !judgePlan(input, input.present).breaches.length) continue;
        const { plan } = await planOfController(tx, row, month);
        if (plan) breakers.push({ controllerId: row.id, propertyId, plan });
      }
    }
    return breakers;
  }
}
