import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { type KeptRecords, VersionConflict } from '../../../platform/records/kept-records.js';
import { fieldworkProblems } from '../fieldwork.problems.js';
import { WorkOrderRow } from './work-order.entity.js';
import { notToExceedOfProperty } from './not-to-exceed.loader.js';
import { exceeds, isUnpriced } from './work-order-cost.js';
import { hasEnded } from './work-order-kinds.js';
import { workOrders } from './work-order.repository.js';

/** The work order, if the actor sees it: absent, another crew's and another organization's have the same answer. With `alsoBefore` also one that was given out to the actor's crews once. */
export async function requireWorkOrder(tx: OrganizationTransaction, id: string, alsoBefore = false): Promise<WorkOrderRow> {
  const [row] = await workOrders.seen(tx, { ids: [id], alsoBefore });
  if (!row) throw platformProblems.notFound({ thing: 'work order', id });
  return row;
}

/** The same, locked until the transaction ends, if it has the version that was read and is still alive. */
export async function holdWorkOrder(
  tx: OrganizationTransaction,
  records: KeptRecords,
  id: string,
  version: number,
  alsoBefore = false,
): Promise<WorkOrderRow | VersionConflict> {
  await requireWorkOrder(tx, id, alsoBefore);
  const held = await records.change(tx, WorkOrderRow, id, version, {});
  if (!(held instanceof VersionConflict) && hasEnded(held.state))
    throw fieldworkProblems.workOrderEnded({ workOrderId: id, state: held.state });
  return held;
}

/** Whether it waits for approval, and still must: the client decides on its price, it has none yet, or it costs more than the client now lets be spent. */
export async function stillWaits(tx: OrganizationTransaction, order: WorkOrderRow): Promise<boolean> {
  if (order.state !== 'waiting for approval') return false;
  return order.isOffer || isUnpriced(order) || exceeds(order, await notToExceedOfProperty.of(tx).load(order.propertyId));
}
