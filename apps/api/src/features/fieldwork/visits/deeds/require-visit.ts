import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { platformProblems } from '../../../../platform/problems/platform.problems.js';
import type { VisitRow } from '../visit.entity.js';
import { visits } from '../visit.repository.js';
import { arrivals } from './arrival.repository.js';

/**
 * The visit, locked until the transaction ends, if the actor sees the work of its crew.
 *
 * @param id - The visit's own, or the name that a phone gave it which joined it.
 */
export async function requireVisit(tx: OrganizationTransaction, id: string): Promise<VisitRow> {
  const own = (await arrivals.ofName(tx, id))?.visitId ?? id;
  const [seen] = await visits.seen(tx, { ids: [own] });
  const visit = seen && (await visits.locked(tx, own));
  if (!visit) throw platformProblems.notFound({ thing: 'visit', id });
  return visit;
}

/** The same where something was done: an arrival that was taken back was none by mistake. */
export async function workedVisit(tx: OrganizationTransaction, id: string): Promise<VisitRow> {
  const visit = await requireVisit(tx, id);
  if (!visit.withdrawnAt) return visit;
  await visits.update(tx, visit.id, STANDS);
  return { ...visit, ...STANDS };
}

/** What a visit is that was not withdrawn. */
export const STANDS = { withdrawnAt: null, withdrawnBy: null } as const;
