import { Args, ID, Mutation, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { MonthScalar } from '../../../../platform/graphql/scalars.js';
import { Allow } from '../../../../platform/identity/allow.js';
import { Permission } from '../../../../platform/identity/permission.js';
import { Tx } from '../../../../platform/identity/tx.js';
import { showWorkOrder, WorkOrder } from '../../orders/work-order.type.js';
import { OrderSeason } from './order-season.service.js';

/** The seasonal change of controllers. */
@Resolver()
export class OrderSeasonResolver {
  constructor(private readonly order: OrderSeason) {}

  /** a month's settings and the order to enter them, for each controller of at most 10 properties where that is worth the way */
  @Allow(Permission.PlanMonths)
  @Mutation(() => [WorkOrder])
  async orderSeason(
    @Tx() tx: OrganizationTransaction,
    @Args('month', { type: () => MonthScalar }) month: string,
    @Args('propertyIds', { type: () => [ID] }) propertyIds: string[],
    @Args('what', { type: () => String }) what: string,
  ): Promise<WorkOrder[]> {
    return (await this.order.run(tx, { propertyIds, month, what: what.trim() })).map(showWorkOrder);
  }
}
