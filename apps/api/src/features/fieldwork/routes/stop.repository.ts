import { In, IsNull } from 'typeorm';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { StopRow } from './stop.entity.js';

/** All SQL of stops. */
export const stops = {
  ofIds(tx: OrganizationTransaction, ids: readonly string[]): Promise<StopRow[]> {
    return tx.of(StopRow).findBy({ organizationId: tx.organizationId, id: In([...ids]) });
  },

  /** Those in use, in the order of the day. */
  ofRoutes(tx: OrganizationTransaction, routeIds: readonly string[]): Promise<StopRow[]> {
    return tx.of(StopRow).find({
      where: { organizationId: tx.organizationId, routeId: In([...routeIds]), retiredAt: IsNull() },
      order: { position: 'ASC', id: 'ASC' },
    });
  },

  /** The stop of a property in a route, also one that was taken off it. */
  ofRouteAndProperty(tx: OrganizationTransaction, routeId: string, propertyId: string): Promise<StopRow | null> {
    return tx.of(StopRow).findOneBy({ organizationId: tx.organizationId, routeId, propertyId });
  },

  /** Whether a work order or a visit names the stop. */
  async isNeeded(tx: OrganizationTransaction, id: string): Promise<boolean> {
    const [row] = await tx.query<{ needed: boolean }>(
      'select exists (select from work_order where organization_id = $1 and stop_id = $2 and retired_at is null) or exists (select from visit where organization_id = $1 and stop_id = $2 and withdrawn_at is null) as needed',
      [tx.organizationId, id],
    );
    return row!.needed;
  },

  /** Gives the stops of a route their positions, from 1 in the order of the ids. */
  async number(tx: OrganizationTransaction, routeId: string, ids: readonly string[]): Promise<void> {
    await tx.query(
      'update stop set position = place.position from unnest($3::uuid[]) with ordinality as place (id, position) where stop.organization_id = $1 and stop.route_id = $2 and stop.id = place.id and stop.position <> place.position',
      [tx.organizationId, routeId, ids],
    );
  },
};
