import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { Permission, roleIncludes } from '../../../../platform/identity/permission.js';
import { platformProblems } from '../../../../platform/problems/platform.problems.js';
import type { VisitRow } from '../visit.entity.js';
import { arrivals } from './arrival.repository.js';
import { workOfVisit } from './work-of-visit.repository.js';

/**
 * Refuses who neither came to a visit, nor recorded anything there, nor may end others' stops. Who of the crew was there first, and whose phone
 * said so, makes no difference.
 */
export async function requireOwn(tx: OrganizationTransaction, { id, personId }: VisitRow): Promise<void> {
  const { actor } = tx;
  if (roleIncludes(actor.role, Permission.CloseOthersStops)) return;
  if (actor.personId === null || !(personId === actor.personId || (await hasComeOrWorked(tx, id, actor.personId))))
    throw platformProblems.notAllowed({ permission: Permission.CloseOthersStops });
}

const hasComeOrWorked = async (tx: OrganizationTransaction, visitId: string, personId: string): Promise<boolean> =>
  (await arrivals.hasCome(tx, visitId, personId)) || workOfVisit.isOf(tx, visitId, personId);
