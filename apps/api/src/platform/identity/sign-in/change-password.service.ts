import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../database/organization-transaction.js';
import { platformProblems } from '../../problems/platform.problems.js';
import { identityProblems } from '../sessions/identity.problems.js';
import { people } from '../members/person.repository.js';
import type { RequestScope } from '../request-scope.js';
import { hashPassword, passwordFits } from '../sessions/passwords.js';
import { Sessions } from '../sessions/sessions.js';
import { Tries } from '../sessions/tries.js';
import { Enter } from './enter.service.js';

/** Gives a person another password: all their sessions end, and this device gets a new one. */
@Injectable()
export class ChangePassword {
  constructor(
    private readonly tries: Tries,
    private readonly sessions: Sessions,
    private readonly enter: Enter,
  ) {}

  async run(scope: RequestScope, tx: OrganizationTransaction, words: { present: string; wished: string }): Promise<void> {
    const personId = tx.actor.personId!;
    const address = scope.request.ip ?? 'unknown';
    const wait = await this.tries.count(address, personId);
    if (wait !== null) throw platformProblems.tooMany({ retryInSeconds: wait });
    if (!(await passwordFits(await people.passwordHash(tx, personId), words.present))) throw identityProblems.wrongPassword({});
    await this.tries.forgive(address, personId);
    await people.change(tx, personId, { passwordHash: await hashPassword(words.wished) });
    await this.sessions.closeAll(personId);
    await this.enter.run(scope, personId, tx.organizationId);
  }
}
