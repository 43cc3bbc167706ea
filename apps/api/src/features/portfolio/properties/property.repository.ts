import { In, IsNull } from 'typeorm';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { PropertyRow } from './property.entity.js';

/** What a role may see, as a condition on `property` with $1 the organization and $2 the member or client. */
const SCOPES = {
  all: { condition: '$2::uuid is null', of: () => null },
  crew: {
    condition: `exists (select from stop join route on route.organization_id = stop.organization_id and route.id = stop.route_id join crew_member on crew_member.organization_id = route.organization_id and crew_member.crew_id = route.crew_id where stop.organization_id = $1 and stop.property_id = property.id and stop.retired_at is null and route.retired_at is null and crew_member.member_id = $2)`,
    of: (tx: OrganizationTransaction) => tx.actor.memberId,
  },
  client: { condition: 'property.client_id = $2', of: (tx: OrganizationTransaction) => tx.actor.clientId },
} as const;

const SCOPE_OF_ROLE = {
  owner: SCOPES.all,
  office: SCOPES.all,
  crewLead: SCOPES.crew,
  technician: SCOPES.crew,
  client: SCOPES.client,
} as const;

/** What people type, as a pattern: their own % and _ are letters. */
const pattern = (text: string): string => `%${text.trim().replace(/[\\%_]/g, (letter) => `\\${letter}`)}%`;

/** All SQL of properties. */
export const properties = {
  ofIds(tx: OrganizationTransaction, ids: readonly string[]): Promise<PropertyRow[]> {
    return tx.of(PropertyRow).findBy({ organizationId: tx.organizationId, id: In([...ids]) });
  },

  /** Those in use of some clients, by name. */
  ofClients(tx: OrganizationTransaction, clientIds: readonly string[]): Promise<PropertyRow[]> {
    return tx
      .of(PropertyRow)
      .find({ where: { organizationId: tx.organizationId, clientId: In([...clientIds]), retiredAt: IsNull() }, order: { name: 'ASC' } });
  },

  /** The ids that the actor may see: of the ones asked about, or of all in use. */
  async idsInScope(tx: OrganizationTransaction, asked?: readonly string[]): Promise<string[]> {
    const scope = SCOPE_OF_ROLE[tx.actor.role];
    const rows = await tx.query<{ id: string }>(
      `select id from property where organization_id = $1 and (${scope.condition}) and ${asked ? 'id = any($3::uuid[])' : 'retired_at is null and $3::uuid[] is null'}`,
      [tx.organizationId, scope.of(tx), asked ?? null],
    );
    return rows.map((row) => row.id);
  },

  /** Those in use that the actor may see, by name: all, or those whose name, client, address or city holds a text. */
  async found(tx: OrganizationTransaction, text: string | null): Promise<PropertyRow[]> {
    const scope = SCOPE_OF_ROLE[tx.actor.role];
    const rows = await tx.query<{ id: string }>(
      `select property.id from property join client on client.organization_id = property.organization_id and client.id = property.client_id where property.organization_id = $1 and (${scope.condition}) and property.retired_at is null and ($3::text is null or property.name ilike $3 or client.name ilike $3 or property.address ilike $3 or property.city ilike $3)`,
      [tx.organizationId, scope.of(tx), text?.trim() ? pattern(text) : null],
    );
    if (!rows.length) return [];
    return tx
      .of(PropertyRow)
      .find({ where: { organizationId: tx.organizationId, id: In(rows.map((row) => row.id)) }, order: { name: 'ASC' } });
  },
};
