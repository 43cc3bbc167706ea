import { randomUUID } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../database/organization-transaction.js';
import { platformProblems } from '../../problems/platform.problems.js';
import { ChangeRow } from '../../records/change.entity.js';
import { identityProblems } from '../sessions/identity.problems.js';
import type { Role } from '../../database/actor.js';
import type { MemberRow } from './member.entity.js';
import { members } from './member.repository.js';

/** What a member's place becomes. */
export interface MemberChange {
  readonly deed: 'change' | 'retire';
  readonly role: Role;
  readonly clientId: string | null;
  readonly retiredAt: Date | null;
}

/** Refuses a client for a role that has none, and the role client without one. */
export function judgeRole(role: Role, clientId: string | null): void {
  if (role === 'client' && !clientId)
    throw platformProblems.valueRefused({ field: 'clientId', found: null, expected: 'the client whom this member belongs to' });
  if (role !== 'client' && clientId)
    throw platformProblems.valueRefused({ field: 'clientId', found: clientId, expected: `nothing, for the role ${role} sees all clients` });
}

/** Gives a member another place in the organization; an organization keeps at least one owner. */
@Injectable()
export class ChangeMember {
  async run(tx: OrganizationTransaction, id: string, version: number, change: MemberChange): Promise<MemberRow> {
    judgeRole(change.role, change.clientId);
    const owners = await members.owners(tx);
    const present = await this.present(tx, id);
    if (present.retiredAt) throw platformProblems.notFound({ thing: 'member', id });
    const owns = change.role === 'owner' && !change.retiredAt;
    if (!owns && owners.length === 1 && owners[0]!.id === id) throw identityProblems.lastOwner({});
    const { role, clientId, retiredAt, deed } = change;
    if (!(await members.change(tx, id, version, { role, clientId, retiredAt })))
      throw identityProblems.changedMeanwhile({ thing: 'member', version: present.version });
    const before = { role: present.role, clientId: present.clientId };
    await tx.of(ChangeRow).insert({
      organizationId: tx.organizationId,
      id: randomUUID(),
      thing: 'member',
      thingId: id,
      thingVersion: version + 1,
      deed,
      before: before as never,
      after: { role, clientId } as never,
      personId: tx.actor.personId,
      way: tx.actor.way,
    });
    return this.present(tx, id);
  }

  private async present(tx: OrganizationTransaction, id: string): Promise<MemberRow> {
    const [row] = await members.ofIds(tx, [id]);
    if (!row) throw platformProblems.notFound({ thing: 'member', id });
    return row;
  }
}
