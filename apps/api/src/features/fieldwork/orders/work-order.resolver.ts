import { Args, ID, Query, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission } from '../../../platform/identity/permission.js';
import { Tx } from '../../../platform/identity/tx.js';
import { workOrderOfId } from './work-order.loader.js';
import { workOrders } from './work-order.repository.js';
import { WorkOrder, showWorkOrder } from './work-order.type.js';

/** Work orders: those the actor sees. */
@Resolver(() => WorkOrder)
export class WorkOrderResolver {
  @Allow(Permission.ReadRoutes)
  @Query(() => [WorkOrder], { name: 'workOrders' })
  async list(
    @Tx() tx: OrganizationTransaction,
    @Args('state', { type: () => [String], nullable: true }) states: string[] | null,
    @Args('crewId', { type: () => ID, nullable: true }) crewId: string | null,
    @Args('propertyId', { type: () => ID, nullable: true }) propertyId: string | null,
  ): Promise<WorkOrder[]> {
    return (await workOrders.seen(tx, { states, crewId, propertyIds: propertyId ? [propertyId] : null })).map(showWorkOrder);
  }

  @Allow(Permission.ReadRoutes)
  @Query(() => WorkOrder, { name: 'workOrder', nullable: true })
  async one(@Tx() tx: OrganizationTransaction, @Args('id', { type: () => ID }) id: string): Promise<WorkOrder | null> {
    const row = await workOrderOfId.of(tx).load(id);
    return row && showWorkOrder(row);
  }
}
