import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';

/** Whether a finding has work that is still to be done. */
export async function isWorkedOn(tx: OrganizationTransaction, findingId: string): Promise<boolean> {
  const orders = await tx.query(
    `select from work_order where organization_id = $1 and finding_id = $2 and state not in ('done', 'dropped') limit 1`,
    [tx.organizationId, findingId],
  );
  return orders.length > 0;
}
