import { randomUUID } from 'node:crypto';
import type { DataSource } from 'typeorm';
import type { OrganizationTransaction } from '../../database/organization-transaction.js';
import { PersonRow } from './person.entity.js';

/** What signing in needs to know of a person. */
export interface KnownPerson {
  readonly id: string;
  readonly passwordHash: string | null;
}

/** How an e-mail address is kept and looked for. */
export const asKept = (email: string): string => email.trim().toLowerCase();

/** All SQL of people. They belong to no organization, so those who are not yet signed in are asked for by address. */
export const people = {
  /** Before anybody is signed in. */
  async known(source: DataSource, email: string): Promise<KnownPerson | null> {
    const rows = (await source.query('select id, password_hash as "passwordHash" from person where email = $1', [
      asKept(email),
    ])) as KnownPerson[];
    return rows[0] ?? null;
  },

  one(tx: OrganizationTransaction, id: string): Promise<PersonRow> {
    return tx.of(PersonRow).findOneByOrFail({ id });
  },

  async passwordHash(tx: OrganizationTransaction, id: string): Promise<string | null> {
    const found = await tx.of(PersonRow).findOneOrFail({ where: { id }, select: { id: true, passwordHash: true } });
    return found.passwordHash;
  },

  async change(tx: OrganizationTransaction, id: string, values: Partial<Pick<PersonRow, 'language' | 'passwordHash'>>): Promise<void> {
    await tx.of(PersonRow).update({ id }, values);
  },

  ofEmail(tx: OrganizationTransaction, email: string): Promise<KnownPerson | null> {
    return tx.of(PersonRow).findOne({ where: { email: asKept(email) }, select: { id: true, passwordHash: true } });
  },

  /** @returns the new person's id */
  async add(tx: OrganizationTransaction, values: Pick<PersonRow, 'email' | 'name' | 'language' | 'passwordHash'>): Promise<string> {
    const id = randomUUID();
    await tx.of(PersonRow).insert({ id, ...values });
    return id;
  },
};
