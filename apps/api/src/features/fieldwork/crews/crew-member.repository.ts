import { randomUUID } from 'node:crypto';
import { In } from 'typeorm';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { CrewMemberRow } from './crew-member.entity.js';

/** All SQL of who goes with a crew. */
export const crewMembers = {
  ofCrews(tx: OrganizationTransaction, crewIds: readonly string[]): Promise<CrewMemberRow[]> {
    return tx.of(CrewMemberRow).findBy({ organizationId: tx.organizationId, crewId: In([...crewIds]) });
  },

  ofMember(tx: OrganizationTransaction, memberId: string): Promise<CrewMemberRow[]> {
    return tx.of(CrewMemberRow).findBy({ organizationId: tx.organizationId, memberId });
  },

  /** Those of the ids who can go with a crew: members in use, of any role but client. */
  async able(tx: OrganizationTransaction, memberIds: readonly string[]): Promise<string[]> {
    const rows = await tx.query<{ id: string }>(
      `select id from member where organization_id = $1 and id = any($2::uuid[]) and retired_at is null and role <> 'client'`,
      [tx.organizationId, memberIds],
    );
    return rows.map(({ id }) => id);
  },

  /** Who goes with a crew from now on. */
  async replace(tx: OrganizationTransaction, crewId: string, memberIds: readonly string[]): Promise<void> {
    const table = tx.of(CrewMemberRow);
    await table.delete({ organizationId: tx.organizationId, crewId });
    if (memberIds.length)
      await table.insert(memberIds.map((memberId) => ({ organizationId: tx.organizationId, id: randomUUID(), crewId, memberId })));
  },
};
