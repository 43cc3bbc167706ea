import { defineLoader, grouped } from '../../../../platform/graphql/loader.js';
import type { WorkOrderRow } from '../work-order.entity.js';
import { workOrders } from '../work-order.repository.js';

/** The work at a stop: given out, done, or left for another day. */
export const ordersOfStop = defineLoader<string, readonly WorkOrderRow[]>(
  async (tx, stopIds) => grouped(await workOrders.seen(tx, { stopIds }), (row) => row.stopId!),
  [],
);
