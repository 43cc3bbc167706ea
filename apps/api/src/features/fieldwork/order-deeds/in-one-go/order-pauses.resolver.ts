import { Args, Mutation, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { Allow } from '../../../../platform/identity/allow.js';
import { Permission } from '../../../../platform/identity/permission.js';
import { Tx } from '../../../../platform/identity/tx.js';
import { ControllerToPause } from '../../../plans/rain/rain-pause-list.type.js';
import { crewAndDay } from '../../crews/crew-and-day.js';
import { ordersOfProperty } from '../../orders/lists/orders-of-property.loader.js';
import { hasEnded } from '../../orders/work-order-kinds.js';
import { showWorkOrder, WorkOrder } from '../../orders/work-order.type.js';
import { OrderPausesInput } from './order-pauses.input.js';
import { OrderPauses } from './order-pauses.service.js';

/** Rain pauses as work, and the work that there is for a pause already. */
@Resolver(() => ControllerToPause)
export class OrderPausesResolver {
  constructor(private readonly pauses: OrderPauses) {}

  /** one work order for each controller; its crew's phone shows until when it is to be paused, and done is kept as the pause */
  @Allow(Permission.WritePortfolio)
  @Mutation(() => [WorkOrder])
  async orderPauses(
    @Tx() tx: OrganizationTransaction,
    @Args('input', { type: () => OrderPausesInput }) { pauses, crewId, day }: OrderPausesInput,
  ): Promise<WorkOrder[]> {
    return (await this.pauses.run(tx, pauses, await crewAndDay(tx, crewId ?? null, day ?? null))).map(showWorkOrder);
  }

  /** the order to pause it that is still to be done */
  @ResolveField(() => WorkOrder, { nullable: true })
  async order(@Tx() tx: OrganizationTransaction, @Parent() { controllerId, property }: ControllerToPause): Promise<WorkOrder | null> {
    const orders = await ordersOfProperty.of(tx).load(property.id);
    const row = orders.find((each) => each.controllerId === controllerId && each.pauseUntil !== null && !hasEnded(each.state));
    return row ? showWorkOrder(row) : null;
  }
}
