import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../database/organization-transaction.js';
import { platformProblems } from '../../problems/platform.problems.js';
import { identityProblems } from '../sessions/identity.problems.js';
import { judgeRole } from '../members/change-member.service.js';
import { members } from '../members/member.repository.js';
import { asKept } from '../members/person.repository.js';
import type { Role } from '../../database/actor.js';
import type { InvitationRow } from './invitation.entity.js';
import { newLink } from './invitation-link.js';
import { invitations } from './invitation.repository.js';

/** Whom we ask, and for what place. */
export interface Invited {
  readonly email: string;
  readonly name: string;
  readonly role: Role;
  readonly clientId: string | null;
  readonly language: 'en' | 'es';
}

const ADDRESS = /^[^\s@]+@[^\s@]+$/;

/** Asks somebody to become a member: makes the link, which is told once. */
@Injectable()
export class InviteMember {
  async run(tx: OrganizationTransaction, invited: Invited): Promise<{ invitation: InvitationRow; link: string }> {
    const email = asKept(invited.email);
    if (!ADDRESS.test(email)) throw platformProblems.valueRefused({ field: 'email', found: invited.email, expected: 'an e-mail address' });
    if (!invited.name.trim()) throw platformProblems.valueRefused({ field: 'name', found: invited.name, expected: 'the name of a person' });
    judgeRole(invited.role, invited.clientId);
    if (await members.hasInUse(tx, email)) throw identityProblems.alreadyMember({ email });
    const { link, tokenHash } = newLink(tx.organizationId);
    const invitation = await invitations.add(tx, { ...invited, email, name: invited.name.trim(), tokenHash });
    return { invitation, link };
  }
}
