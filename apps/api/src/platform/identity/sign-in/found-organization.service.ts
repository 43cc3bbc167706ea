import { randomUUID } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import { inTransaction, type OrganizationTransaction } from '../../database/organization-transaction.js';
import { platformProblems } from '../../problems/platform.problems.js';
import { organizationActor } from '../../database/actor.js';
import { identityProblems } from '../sessions/identity.problems.js';
import { AdmitPerson, type Newcomer } from '../members/admit-person.service.js';
import { members } from '../members/member.repository.js';
import { organizations } from '../organizations/organization.repository.js';
import type { RequestScope } from '../request-scope.js';
import { Enter } from './enter.service.js';
import type { Me } from './me.type.js';

/** Founds the first organization of a server, with its owner. */
@Injectable()
export class FoundOrganization {
  constructor(
    private readonly admitPerson: AdmitPerson,
    private readonly enter: Enter,
  ) {}

  async run(scope: RequestScope, name: string, founder: Newcomer): Promise<Me> {
    if (!founder.name.trim())
      throw platformProblems.valueRefused({ field: 'personName', found: founder.name, expected: 'the name of a person' });
    const organizationId = randomUUID();
    const personId = await inTransaction(scope.source, { ...organizationActor(organizationId, 'job'), way: 'screen' }, (tx) =>
      this.found(tx, name, founder),
    );
    return this.enter.run(scope, personId, organizationId);
  }

  private async found(tx: OrganizationTransaction, name: string, founder: Newcomer): Promise<string> {
    if (!(await organizations.noneUntilTheEnd(tx))) throw identityProblems.serverNotEmpty({});
    await organizations.add(tx, name.trim());
    const personId = await this.admitPerson.run(tx, founder);
    await members.add(tx, { personId, role: 'owner', clientId: null });
    return personId;
  }
}
