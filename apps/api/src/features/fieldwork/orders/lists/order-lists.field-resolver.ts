import { Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { Tx } from '../../../../platform/identity/tx.js';
import { Finding } from '../../../findings/finding.type.js';
import { Property } from '../../../portfolio/properties/property.type.js';
import { WorkOrder, showWorkOrder } from '../work-order.type.js';
import { Stop } from '../../routes/stop.type.js';
import { ordersOfFinding } from './orders-of-finding.loader.js';
import { ordersOfProperty } from './orders-of-property.loader.js';
import { ordersOfStop } from './orders-of-stop.loader.js';

/** The work at a stop. */
@Resolver(() => Stop)
export class StopWorkOrdersResolver {
  @ResolveField(() => [WorkOrder])
  async workOrders(@Tx() tx: OrganizationTransaction, @Parent() stop: Stop): Promise<WorkOrder[]> {
    return (await ordersOfStop.of(tx).load(stop.id)).map(showWorkOrder);
  }
}

/** The work that answers a finding. */
@Resolver(() => Finding)
export class FindingWorkOrdersResolver {
  @ResolveField(() => [WorkOrder])
  async workOrders(@Tx() tx: OrganizationTransaction, @Parent() finding: Finding): Promise<WorkOrder[]> {
    return (await ordersOfFinding.of(tx).load(finding.id)).map(showWorkOrder);
  }
}

/** The work on a property, as far as the actor sees it; for a client none. */
@Resolver(() => Property)
export class PropertyWorkOrdersResolver {
  @ResolveField(() => [WorkOrder])
  async workOrders(@Tx() tx: OrganizationTransaction, @Parent() property: Property): Promise<WorkOrder[]> {
    return (await ordersOfProperty.of(tx).load(property.id)).map(showWorkOrder);
  }
}
