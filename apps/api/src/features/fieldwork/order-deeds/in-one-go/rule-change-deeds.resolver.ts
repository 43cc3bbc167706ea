import { Args, ID, Mutation, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { Allow } from '../../../../platform/identity/allow.js';
import { Permission } from '../../../../platform/identity/permission.js';
import { Tx } from '../../../../platform/identity/tx.js';
import { BringInRule, WateringRuleInput } from '../../../portfolio/suppliers/rules/bring-in-rule.service.js';
import { showWateringRule, WateringRule } from '../../../portfolio/suppliers/rules/watering-rule.type.js';
import { crewAndDay } from '../../crews/crew-and-day.js';
import { showWorkOrder, WorkOrder } from '../../orders/work-order.type.js';
import { OrderRuleChange } from './order-rule-change.service.js';
import { RuleChangeOrderInput } from './rule-change-order.input.js';

/** A supplier's new rule, from the rule to the crews. */
@Resolver()
export class RuleChangeDeedsResolver {
  constructor(
    private readonly bringIn: BringInRule,
    private readonly order: OrderRuleChange,
  ) {}

  /** keeps the rule; the one that it replaces ends the day before */
  @Allow(Permission.WritePortfolio)
  @Mutation(() => WateringRule)
  async bringInRule(
    @Tx() tx: OrganizationTransaction,
    @Args('rule', { type: () => WateringRuleInput }) rule: WateringRuleInput,
    @Args('replaces', { type: () => ID, nullable: true }) replaces: string | null | undefined,
  ): Promise<WateringRule> {
    return showWateringRule(await this.bringIn.run(tx, rule, replaces ?? null));
  }

  /** new settings and a work order for each controller of these properties that breaks a rule in force in the month */
  @Allow(Permission.WritePortfolio)
  @Mutation(() => [WorkOrder])
  async orderRuleChange(
    @Tx() tx: OrganizationTransaction,
    @Args('input', { type: () => RuleChangeOrderInput }) input: RuleChangeOrderInput,
  ): Promise<WorkOrder[]> {
    const { propertyIds, month, what, crewId, day } = input;
    const orders = await this.order.run(tx, {
      propertyIds,
      month,
      what: what.trim(),
      to: await crewAndDay(tx, crewId ?? null, day ?? null),
    });
    return orders.map(showWorkOrder);
  }
}
