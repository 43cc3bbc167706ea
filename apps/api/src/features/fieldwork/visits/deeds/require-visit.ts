import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { platformProblems } from '../../../../platform/problems/platform.problems.js';
import type { VisitRow } from '../visit.entity.js';
import { visits } from '../visit.repository.js';

/** The visit, locked until the transaction ends, if the actor sees the work of its crew. */
export async function requireVisit(tx: OrganizationTransaction, id: string): Promise<VisitRow> {
  const [seen] = await visits.seen(tx, { ids: [id] });
  const visit = seen && (await visits.locked(tx, id));
  if (!visit) throw platformProblems.notFound({ thing: 'visit', id });
  return visit;
}
