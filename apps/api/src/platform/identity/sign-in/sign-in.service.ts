import { Injectable } from '@nestjs/common';
import { asKept, people } from '../members/person.repository.js';
import type { RequestScope } from '../request-scope.js';
import { passwordFits } from '../sessions/passwords.js';
import { Sessions } from '../sessions/sessions.js';
import { Tries } from '../sessions/tries.js';
import { Enter } from './enter.service.js';
import { refused, type SignedIn, type SignInRefused, signedIn } from './sign-in.type.js';

/** Signs a person in. An unknown address and a wrong password cost the same time and give the same answer. */
@Injectable()
export class SignIn {
  constructor(
    private readonly tries: Tries,
    private readonly sessions: Sessions,
    private readonly enter: Enter,
  ) {}

  async run(
    scope: RequestScope,
    offered: { email: string; password: string; organizationId: string | null },
  ): Promise<SignedIn | SignInRefused> {
    const address = scope.request.ip ?? 'unknown';
    const email = asKept(offered.email);
    const wait = await this.tries.count(address, email);
    if (wait !== null) return refused('TOO_MANY_TRIES', wait);
    const person = await people.known(scope.source, email);
    const fits = await passwordFits(person?.passwordHash ?? null, offered.password);
    if (!person || !fits) return refused('WRONG_EMAIL_OR_PASSWORD');
    await this.tries.forgive(address, email);
    const memberships = await this.sessions.memberships(person.id);
    const chosen = offered.organizationId ? memberships.find((one) => one.organizationId === offered.organizationId) : memberships[0];
    if (!chosen) return refused('NO_ORGANIZATION');
    return signedIn(await this.enter.run(scope, person.id, chosen.organizationId));
  }
}
