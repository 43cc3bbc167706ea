import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { defineLoader } from '../../../../platform/graphql/loader.js';
import { nowIn } from '../../organization-clock.js';
import { type ChangedPart, type WhoChanged, workOrders } from '../work-order.repository.js';

export type { WhoChanged };

/** Who gave an order the state that it has. */
export const whoSetState = defineLoader<string, WhoChanged | null>((tx, ids) => changed(tx, 'state', ids), null);

/** Who put an order where it is given out. */
export const whoGaveOut = defineLoader<string, WhoChanged | null>((tx, ids) => changed(tx, 'stopId', ids), null);

/** When it was is told on the organization's clock, beside the times that phones tell. */
async function changed(tx: OrganizationTransaction, part: ChangedPart, ids: readonly string[]): Promise<Map<string, WhoChanged>> {
  const aheadMs = (await nowIn(tx)).getTime() - Date.now();
  const rows = await workOrders.changedBy(tx, part, ids);
  return new Map([...rows].map(([id, who]) => [id, { ...who, at: new Date(who.at.getTime() + aheadMs) }]));
}
