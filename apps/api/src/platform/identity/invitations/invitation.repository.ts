import { IsNull, MoreThan } from 'typeorm';
import type { OrganizationTransaction } from '../../database/organization-transaction.js';
import { InvitationRow } from './invitation.entity.js';

const DAYS_7_MS = 7 * 24 * 60 * 60 * 1000;

const open = (tx: OrganizationTransaction) => ({
  organizationId: tx.organizationId,
  acceptedAt: IsNull(),
  expiresAt: MoreThan(new Date()),
});

/** All SQL of invitations. */
export const invitations = {
  /** Those that wait for an answer, the latest first. */
  waiting(tx: OrganizationTransaction): Promise<InvitationRow[]> {
    return tx.of(InvitationRow).find({ where: open(tx), order: { createdAt: 'DESC', id: 'ASC' } });
  },

  ofToken(tx: OrganizationTransaction, tokenHash: Buffer): Promise<InvitationRow | null> {
    return tx.of(InvitationRow).findOneBy({ ...open(tx), tokenHash });
  },

  /** Uses an invitation up. Whoever comes second finds it used: the row's lock decides, not the look before. */
  async use(tx: OrganizationTransaction, id: string): Promise<boolean> {
    const { affected } = await tx.of(InvitationRow).update({ ...open(tx), id }, { acceptedAt: new Date() });
    return affected === 1;
  },

  /** Takes an invitation back; whether it still waited. */
  async withdraw(tx: OrganizationTransaction, id: string): Promise<boolean> {
    const { affected } = await tx.of(InvitationRow).delete({ organizationId: tx.organizationId, id, acceptedAt: IsNull() });
    return affected === 1;
  },

  /** A new invitation replaces those of the same address that wait. */
  async add(
    tx: OrganizationTransaction,
    values: Pick<InvitationRow, 'email' | 'name' | 'language' | 'role' | 'clientId' | 'tokenHash'>,
  ): Promise<InvitationRow> {
    const table = tx.of(InvitationRow);
    await table.delete({ organizationId: tx.organizationId, email: values.email, acceptedAt: IsNull() });
    const now = Date.now();
    const made = table.create({
      organizationId: tx.organizationId,
      ...values,
      acceptedAt: null,
      invitedBy: tx.actor.personId,
      createdAt: new Date(now),
      expiresAt: new Date(now + DAYS_7_MS),
    });
    await table.insert(made);
    return made;
  },
};
