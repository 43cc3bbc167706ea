import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../database/organization-transaction.js';
import { identityProblems } from '../sessions/identity.problems.js';
import { hashPassword, passwordFits } from '../sessions/passwords.js';
import { asKept, people } from './person.repository.js';

/** Who comes in, as they were named to us. */
export interface Newcomer {
  readonly email: string;
  readonly name: string;
  readonly language: 'en' | 'es';
  readonly password: string;
}

/** Finds the person of an address, who must then know their password; else makes one who has it from now on. */
@Injectable()
export class AdmitPerson {
  async run(tx: OrganizationTransaction, newcomer: Newcomer): Promise<string> {
    const known = await people.ofEmail(tx, newcomer.email);
    if (known?.passwordHash) {
      if (!(await passwordFits(known.passwordHash, newcomer.password))) throw identityProblems.wrongPassword({});
      return known.id;
    }
    const passwordHash = await hashPassword(newcomer.password);
    if (!known)
      return people.add(tx, { email: asKept(newcomer.email), name: newcomer.name.trim(), language: newcomer.language, passwordHash });
    await people.change(tx, known.id, { passwordHash });
    return known.id;
  }
}
