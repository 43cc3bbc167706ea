import { defineLoader } from '../../../platform/graphql/loader.js';
import type { WorkOrderRow } from './work-order.entity.js';
import { workOrders } from './work-order.repository.js';

/** The work order of an id, as far as the actor sees it. */
export const workOrderOfId = defineLoader<string, WorkOrderRow | null>(
  async (tx, ids) => new Map((await workOrders.seen(tx, { ids })).map((row) => [row.id, row])),
  null,
);

/** The same, or as far as it was given out to the actor's crews before: a phone may not have heard that it is another's by now. */
export const workOrderOnceGiven = defineLoader<string, WorkOrderRow | null>(
  async (tx, ids) => new Map((await workOrders.seen(tx, { ids, alsoBefore: true })).map((row) => [row.id, row])),
  null,
);
