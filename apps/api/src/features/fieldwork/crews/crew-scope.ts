import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { crewMembers } from './crew-member.repository.js';

const OWN_CREWS = Symbol('own crews');

/**
 * The crews whose routes, stops and work orders the actor sees: a crew lead and a technician those they go with,
 * a client none, owner and office all.
 *
 * @returns ids of crews, or null for all
 */
export async function crewsInScope(tx: OrganizationTransaction): Promise<readonly string[] | null> {
  const { role, memberId } = tx.actor;
  if (role === 'owner' || role === 'office') return null;
  if (role === 'client' || !memberId) return [];
  const known = tx.kept.get(OWN_CREWS) as Promise<readonly string[]> | undefined;
  const asked = known ?? crewMembers.ofMember(tx, memberId).then((rows) => rows.map(({ crewId }) => crewId));
  tx.kept.set(OWN_CREWS, asked);
  return asked;
}

/** Whether the actor sees the work of a crew. */
export async function crewInScope(tx: OrganizationTransaction, crewId: string): Promise<boolean> {
  const scope = await crewsInScope(tx);
  return scope === null || scope.includes(crewId);
}
