import { type FindOptionsWhere, IsNull } from 'typeorm';
import type { OrganizationTransaction } from '../database/organization-transaction.js';
import { platformProblems } from '../problems/platform.problems.js';
import type { KeptRow } from './kept-row.js';
import { isUuid } from './uuid.js';

/**
 * Refuses to point at a thing that is not there, retired, or another organization's; null points nowhere and passes.
 *
 * @param table the table's name, so that a room can ask about a thing of a room that stands on it
 */
export async function requireInUse(tx: OrganizationTransaction, table: string, id: string | null | undefined): Promise<void> {
  if (!id) return;
  const there =
    isUuid(id) &&
    (await tx.of<KeptRow>(table).existsBy({ organizationId: tx.organizationId, id, retiredAt: IsNull() } as FindOptionsWhere<KeptRow>));
  if (!there) throw platformProblems.notFound({ thing: table.replaceAll('_', ' '), id });
}
