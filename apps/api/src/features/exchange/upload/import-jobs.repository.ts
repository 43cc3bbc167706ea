import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';

/** The kind of the background work. */
export const IMPORT = 'import';

/** The background work that imports an upload, or did; null where none was asked for, or it failed. */
export async function importJobOf(tx: OrganizationTransaction, importId: string): Promise<{ id: string; state: string } | null> {
  const [job] = await tx.query<{ id: string; state: string }>(
    `select id, state from background_job where organization_id = $1 and kind = $2 and payload ->> 'importId' = $3 and state <> 'failed' order by created_at desc limit 1`,
    [tx.organizationId, IMPORT, importId],
  );
  return job ?? null;
}
