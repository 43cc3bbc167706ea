import { defineLoader } from '../../../platform/graphql/loader.js';
import type { WorkOrderRow } from './work-order.entity.js';
import { workOrders } from './work-order.repository.js';

/** The work order of an id, as far as the actor sees it. */
export const workOrderOfId = defineLoader<string, WorkOrderRow | null>(
  async (tx, ids) => new Map((await workOrders.seen(tx, { ids })).map((row) => [row.id, row])),
  null,
);
