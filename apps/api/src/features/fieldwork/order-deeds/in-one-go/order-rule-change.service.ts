import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { platformProblems } from '../../../../platform/problems/platform.problems.js';
import { inScope } from '../../../portfolio/properties/property-scope.service.js';
import { BreakersOfRules, type Breaker } from '../../../plans/rule-change/breakers-of-rules.service.js';
import { readAnew } from '../../../plans/offers/plan-of-controller.service.js';
import type { CrewAndDay } from '../assign-work-order.service.js';
import type { WorkOrderRow } from '../../orders/work-order.entity.js';
import { OrderPlan } from './order-plan.service.js';
import { ordersOfProperty } from '../../orders/lists/orders-of-property.loader.js';

const MOST = 20;
const ENDED = ['done', 'dropped'];

/** What is to be ordered: at which properties, since when the rule holds, and why it is done. */
export interface RuleChangeOrder {
  readonly propertyIds: readonly string[];
  readonly month: string;
  readonly what: string;
  readonly to: CrewAndDay | null;
}

/** Makes the work that brings controllers within the rules in force: new settings for each that breaks one, and the order to enter them. */
@Injectable()
export class OrderRuleChange {
  constructor(
    private readonly breakers: BreakersOfRules,
    private readonly order: OrderPlan,
  ) {}

  /** @returns one order for each controller that breaks a rule; one that has such an order already keeps it */
  async run(tx: OrganizationTransaction, order: RuleChangeOrder): Promise<WorkOrderRow[]> {
    const { propertyIds, month } = order;
    if (propertyIds.length > MOST)
      throw platformProblems.valueRefused({ field: 'propertyIds', found: propertyIds.length, expected: `at most ${MOST} at a time` });
    const seen = await inScope(tx, propertyIds);
    const stranger = propertyIds.find((id) => !seen.has(id.toLowerCase()));
    if (stranger !== undefined) throw platformProblems.notFound({ thing: 'property', id: stranger });
    // Planned before anything is written; then read anew, and planned anew only where something has changed meanwhile.
    await this.breakers.run(tx, [...seen], month);
    await readAnew(tx);
    const orders: WorkOrderRow[] = [];
    for (const breaker of await this.breakers.run(tx, [...seen], month)) orders.push(await this.orderFor(tx, breaker, order));
    return orders;
  }

  private async orderFor(tx: OrganizationTransaction, breaker: Breaker, { what, to }: RuleChangeOrder): Promise<WorkOrderRow> {
    const { controllerId, propertyId } = breaker;
    const before = (await ordersOfProperty.of(tx).load(propertyId)).find(
      (each) => each.controllerId === controllerId && each.kind === 'adjust' && each.what === what && !ENDED.includes(each.state),
    );
    if (before) return before;
    return this.order.run(tx, breaker, what, to);
  }
}
