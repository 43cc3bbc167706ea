import { defineLoader, grouped } from '../../../../platform/graphql/loader.js';
import type { WorkOrderRow } from '../work-order.entity.js';
import { workOrders } from '../work-order.repository.js';

/** The work orders that answer a finding, the newest first. */
export const ordersOfFinding = defineLoader<string, readonly WorkOrderRow[]>(
  async (tx, findingIds) => grouped(await workOrders.seen(tx, { findingIds }), (row) => row.findingId!),
  [],
);
