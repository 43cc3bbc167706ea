import { Injectable } from '@nestjs/common';
import { judgePlan } from '@rillbook/irrigation/planning/judge/judge-plan.js';
import type { RuleBreach } from '@rillbook/irrigation/rules/rule-breach.js';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { organizations } from '../../../platform/identity/organizations/organization.repository.js';
import { todayOf } from '../../../platform/jobs/clock.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { controllersOfProperty } from '../../portfolio/controllers/controllers-of-property.loader.js';
import { showController } from '../../portfolio/controllers/controller.type.js';
import { propertiesOfSupplier } from '../../portfolio/properties/properties-of-supplier.loader.js';
import { showProperty } from '../../portfolio/properties/property.type.js';
import { proposedRule, replacedRule, type WateringRuleInput } from '../../portfolio/suppliers/rules/bring-in-rule.service.js';
import { gatherPlan, type RulesInstead } from '../gather/plan-input.service.js';
import { ruleOfRow } from '../gather/rule-of-row.js';
import { PlanBreach } from '../offers/controller-plan.type.js';
import { planOfController } from '../offers/plan-of-controller.service.js';
import { showPlan } from '../offers/show-plan.js';
import { ControllerUnderRule, RuleChange } from './rule-change.type.js';

const MOST = 20;

/** Which properties of the supplier are looked at. */
export interface Slice {
  readonly skip: number;
  readonly first: number;
}

/** Shows what a supplier's new rule would change: which controllers break it, and what each would be set to. */
@Injectable()
export class WhatARuleChanges {
  async run(tx: OrganizationTransaction, input: WateringRuleInput, replacesId: string | null, slice: Slice): Promise<RuleChange> {
    judgeSlice(slice);
    const proposed = ruleOfRow(await proposedRule(tx, input));
    if (replacesId !== null) await replacedRule(tx, input.supplierId, replacesId);
    const instead: RulesInstead = (rules) => [
      ...rules.filter(({ id }) => id !== replacesId?.toLowerCase()).map(({ rule }) => rule),
      proposed,
    ];
    const today = todayOf(await organizations.own(tx));
    const month = (input.effectiveFrom && input.effectiveFrom > today ? input.effectiveFrom : today).slice(0, 7);
    const properties = await propertiesOfSupplier.of(tx).load(input.supplierId.toLowerCase());
    const controllers: ControllerUnderRule[] = [];
    for (const property of properties.slice(slice.skip, slice.skip + slice.first)) {
      for (const row of await controllersOfProperty.of(tx).load(property.id)) {
        const under = await underRules(tx, row, month, instead);
        controllers.push(
          Object.assign(new ControllerUnderRule(), {
            controllerId: row.id,
            property: showProperty(property),
            controller: showController(row),
            ...under,
          }),
        );
      }
    }
    return Object.assign(new RuleChange(), { month, properties: properties.length, controllers });
  }
}

type Row = Awaited<ReturnType<ReturnType<(typeof controllersOfProperty)['of']>['load']>>[number];

async function underRules(
  tx: OrganizationTransaction,
  row: Row,
  month: string,
  instead: RulesInstead,
): Promise<Pick<ControllerUnderRule, 'breaches' | 'plan'>> {
  const { input } = await gatherPlan(tx, row, month, instead);
  const breaches = input?.present ? judgePlan(input, input.present).breaches : null;
  if (!breaches?.length) return { breaches: breaches && [], plan: null };
  return { breaches: breaches.map(shownBreach), plan: showPlan(row.id, month, await planOfController(tx, row, month, instead)) };
}

const shownBreach = ({ rule, kind, program, stations, times }: RuleBreach): PlanBreach =>
  Object.assign(new PlanBreach(), { rule, kind, program, stations: [...stations], times });

function judgeSlice({ skip, first }: Slice): void {
  if (skip < 0) throw platformProblems.valueRefused({ field: 'skip', found: skip, expected: '0 or more' });
  if (first < 1 || first > MOST) throw platformProblems.valueRefused({ field: 'first', found: first, expected: `1 to ${MOST}` });
}
