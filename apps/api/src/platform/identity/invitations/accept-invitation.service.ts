import { Injectable } from '@nestjs/common';
import { inTransaction, type OrganizationTransaction } from '../../database/organization-transaction.js';
import { platformProblems } from '../../problems/platform.problems.js';
import { organizationActor } from '../../database/actor.js';
import { identityProblems } from '../sessions/identity.problems.js';
import { AdmitPerson } from '../members/admit-person.service.js';
import { members } from '../members/member.repository.js';
import type { RequestScope } from '../request-scope.js';
import { Tries } from '../sessions/tries.js';
import { Enter } from '../sign-in/enter.service.js';
import type { Me } from '../sign-in/me.type.js';
import type { InvitationRow } from './invitation.entity.js';
import { type InvitationLink, readLink } from './invitation-link.js';
import { invitations } from './invitation.repository.js';

/** Makes a member of whoever holds the link and sets, or knows, the person's password. A link serves once. */
@Injectable()
export class AcceptInvitation {
  constructor(
    private readonly admitPerson: AdmitPerson,
    private readonly enter: Enter,
    private readonly tries: Tries,
  ) {}

  async run(scope: RequestScope, link: string, password: string): Promise<Me> {
    const named = readLink(link);
    if (!named) throw identityProblems.invitationNotValid({});
    const wait = await this.tries.count(scope.request.ip ?? 'unknown', named.organizationId);
    if (wait !== null) throw platformProblems.tooMany({ retryInSeconds: wait });
    const personId = await inTransaction(scope.source, { ...organizationActor(named.organizationId, 'job'), way: 'screen' }, (tx) =>
      this.admit(tx, named, password),
    );
    await this.tries.forgive(scope.request.ip ?? 'unknown', named.organizationId);
    return this.enter.run(scope, personId, named.organizationId);
  }

  private async admit(tx: OrganizationTransaction, named: InvitationLink, password: string): Promise<string> {
    const invitation = await invitations.ofToken(tx, named.tokenHash);
    if (!invitation || !(await invitations.use(tx, invitation.id))) throw identityProblems.invitationNotValid({});
    const personId = await this.admitPerson.run(tx, { ...invitation, password });
    await this.join(tx, personId, invitation);
    return personId;
  }

  /** Whoever was a member before takes their old place again, with the new role. */
  private async join(tx: OrganizationTransaction, personId: string, { role, clientId }: InvitationRow): Promise<void> {
    const before = await members.ofPerson(tx, personId);
    if (!before) await members.add(tx, { personId, role, clientId });
    else await members.change(tx, before.id, before.version, { role, clientId, retiredAt: null });
  }
}
