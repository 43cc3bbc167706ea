import type { DataSource } from 'typeorm';
import type { OrganizationTransaction } from '../../database/organization-transaction.js';
import { OrganizationItself } from './organization.entity.js';

type Said = Pick<OrganizationItself, 'name' | 'units' | 'language' | 'leastConfidence' | 'leastLitres' | 'leastMoney'>;

/** All SQL of the organization itself. */
export const organizations = {
  /** The one whose transaction this is. */
  own(tx: OrganizationTransaction): Promise<OrganizationItself> {
    return tx.of(OrganizationItself).findOneByOrFail({ id: tx.organizationId });
  },

  /** Whether the row still had that version. */
  async change(tx: OrganizationTransaction, version: number, values: Said): Promise<boolean> {
    const { affected } = await tx.of(OrganizationItself).update({ id: tx.organizationId, version }, { ...values, version: version + 1 });
    return affected === 1;
  },

  /** Adds the one whose transaction this is. */
  async add(tx: OrganizationTransaction, name: string): Promise<void> {
    await tx.of(OrganizationItself).insert({ id: tx.organizationId, name });
  },

  /** Whether there is no organization at all. */
  async none(source: DataSource): Promise<boolean> {
    const [answer] = (await source.query('select server_is_empty() as empty')) as { empty: boolean }[];
    return answer!.empty;
  },

  /** Whether the demonstration was cleared on this server: then it does not come back by itself. */
  async demoWasCleared(source: DataSource): Promise<boolean> {
    const [answer] = (await source.query('select demo_was_cleared() as cleared')) as { cleared: boolean }[];
    return answer!.cleared;
  },

  /** Whether there is no organization, and nobody else can found one until the transaction ends. */
  async noneUntilTheEnd(tx: OrganizationTransaction): Promise<boolean> {
    await tx.query(`select pg_advisory_xact_lock(hashtext('found an organization'))`);
    const [answer] = await tx.query<{ empty: boolean }>('select server_is_empty() as empty');
    return answer!.empty;
  },

  /** Deletes all demonstrations, with everything in them and the people who are members of nothing else. */
  async clearDemonstrations(tx: OrganizationTransaction): Promise<void> {
    await tx.query('select clear_demo()');
  },
};
