import { randomUUID } from 'node:crypto';
import type { Actor, Role } from '../../../platform/database/actor.js';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';

/** A finding to be turned into work. */
export interface OpenFinding {
  readonly id: string;
  readonly version: number;
  readonly propertyId: string;
  readonly property: string;
}

const idOf = async (tx: OrganizationTransaction, sql: string, name: string): Promise<string> => {
  const [row] = await tx.query<{ id: string }>(sql, [tx.organizationId, name]);
  if (!row) throw new TypeError(`the demonstration names "${name}", which its folder does not hold`);
  return row.id;
};

/** All SQL that only the demonstration needs. */
export const demo = {
  /** Marks the organization as a demonstration whose world stands still; a company of large sites, told from 2,000 gallons and 10 dollars a month. */
  async standStill(tx: OrganizationTransaction, units: string, on: string): Promise<void> {
    await tx.query(
      'update organization set is_demo = true, units = $2, stands_still_on = $3, least_litres = 7570.823568, least_money = 10 where id = $1',
      [tx.organizationId, units, on],
    );
  },

  clientId: (tx: OrganizationTransaction, name: string): Promise<string> =>
    idOf(tx, 'select id from client where organization_id = $1 and name = $2', name),

  propertyId: (tx: OrganizationTransaction, name: string): Promise<string> =>
    idOf(tx, 'select id from property where organization_id = $1 and name = $2', name),

  memberId: (tx: OrganizationTransaction, personName: string): Promise<string> =>
    idOf(
      tx,
      'select member.id from member join person on person.id = member.person_id where member.organization_id = $1 and person.name = $2',
      personName,
    ),

  /** Whoever runs the office: the work is given out in their name. */
  async office(tx: OrganizationTransaction): Promise<Actor> {
    const [member] = await tx.query<{ memberId: string; personId: string; role: Role }>(
      `select id as "memberId", person_id as "personId", role from member where organization_id = $1 and role in ('office', 'owner') order by role limit 1`,
      [tx.organizationId],
    );
    return { organizationId: tx.organizationId, clientId: null, way: 'screen', ...member! };
  },

  async addToCrew(tx: OrganizationTransaction, crewId: string, memberIds: readonly string[]): Promise<void> {
    await tx.query(
      'insert into crew_member (organization_id, id, crew_id, member_id) select $1, new.id, $2, new.member_id from unnest($3::uuid[], $4::uuid[]) as new (id, member_id)',
      [tx.organizationId, crewId, memberIds.map(() => randomUUID()), memberIds],
    );
  },

  crewId: (tx: OrganizationTransaction, name: string): Promise<string> =>
    idOf(tx, 'select id from crew where organization_id = $1 and name = $2', name),

  /** An open finding of a kind that has no work yet: on a wished property, else the one that costs most. */
  async openFinding(tx: OrganizationTransaction, kind: string, property: string | null): Promise<OpenFinding | null> {
    const [found] = await tx.query<OpenFinding>(
      `select finding.id, finding.version, property.id as "propertyId", property.name as property from finding
         join property on property.organization_id = finding.organization_id and property.id = finding.property_id
        where finding.organization_id = $1 and finding.kind = $2 and finding.state = 'open' and ($3::text is null or property.name = $3)
        order by finding.money desc nulls last, finding.litres desc nulls last, property.name limit 1`,
      [tx.organizationId, kind, property],
    );
    return found ?? null;
  },
};
