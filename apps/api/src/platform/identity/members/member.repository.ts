import { In, IsNull } from 'typeorm';
import type { OrganizationTransaction } from '../../database/organization-transaction.js';
import { MemberRow } from './member.entity.js';
import { asKept } from './person.repository.js';

type Changed = Partial<Pick<MemberRow, 'role' | 'clientId' | 'retiredAt'>>;

/** All SQL of members. */
export const members = {
  /** Those in use, by name. */
  inUse(tx: OrganizationTransaction): Promise<MemberRow[]> {
    return tx.of(MemberRow).find({
      where: { organizationId: tx.organizationId, retiredAt: IsNull() },
      relations: { person: true },
      order: { person: { name: 'ASC' }, id: 'ASC' },
    });
  },

  /** Retired ones too: the past names them. */
  ofIds(tx: OrganizationTransaction, ids: readonly string[]): Promise<MemberRow[]> {
    return tx.of(MemberRow).find({ where: { organizationId: tx.organizationId, id: In([...ids]) }, relations: { person: true } });
  },

  ofPerson(tx: OrganizationTransaction, personId: string): Promise<MemberRow | null> {
    return tx.of(MemberRow).findOneBy({ organizationId: tx.organizationId, personId });
  },

  async hasInUse(tx: OrganizationTransaction, email: string): Promise<boolean> {
    return tx.of(MemberRow).existsBy({ organizationId: tx.organizationId, retiredAt: IsNull(), person: { email: asKept(email) } });
  },

  /** The owners in use; locked, so that two owners cannot retire each other. */
  owners(tx: OrganizationTransaction): Promise<MemberRow[]> {
    return tx.of(MemberRow).find({
      where: { organizationId: tx.organizationId, role: 'owner', retiredAt: IsNull() },
      order: { id: 'ASC' },
      lock: { mode: 'pessimistic_write' },
    });
  },

  /** Whether the row still had that version. */
  async change(tx: OrganizationTransaction, id: string, version: number, values: Changed): Promise<boolean> {
    const { affected } = await tx
      .of(MemberRow)
      .update({ organizationId: tx.organizationId, id, version }, { ...values, version: version + 1 });
    return affected === 1;
  },

  async add(tx: OrganizationTransaction, values: Pick<MemberRow, 'personId' | 'role' | 'clientId'>): Promise<void> {
    await tx.of(MemberRow).insert({ organizationId: tx.organizationId, ...values });
  },
};
