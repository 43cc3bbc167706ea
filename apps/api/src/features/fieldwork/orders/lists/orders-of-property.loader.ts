import { defineLoader, grouped } from '../../../../platform/graphql/loader.js';
import type { WorkOrderRow } from '../work-order.entity.js';
import { workOrders } from '../work-order.repository.js';

/** A property's work orders, the newest first. */
export const ordersOfProperty = defineLoader<string, readonly WorkOrderRow[]>(
  async (tx, propertyIds) => grouped(await workOrders.seen(tx, { propertyIds }), (row) => row.propertyId),
  [],
);
