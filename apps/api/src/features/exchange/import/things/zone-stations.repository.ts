import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';

/** A station of a controller. */
export interface Station {
  readonly controllerId: string;
  readonly station: number;
}

/** All SQL of which zone has which station, in bulk. */
export const zoneStations = {
  /** The names of zones in use that have some stations, by `${controllerId} ${station}`; some zones set aside. */
  async taken(tx: OrganizationTransaction, stations: readonly Station[], aside: readonly string[]): Promise<Map<string, string>> {
    const rows = await tx.query<Station & { name: string }>(
      `select zone.controller_id as "controllerId", zone.station, zone.name from zone
         join unnest($2::uuid[], $3::integer[]) as sought (controller_id, station) on sought.controller_id = zone.controller_id and sought.station = zone.station
        where zone.organization_id = $1 and zone.retired_at is null and not (zone.id = any($4::uuid[]))`,
      [tx.organizationId, stations.map(({ controllerId }) => controllerId), stations.map(({ station }) => station), aside],
    );
    return new Map(rows.map(({ controllerId, station, name }) => [`${controllerId} ${station}`, name]));
  },

  /** Takes some zones off their stations, for the length of a statement. */
  async leave(tx: OrganizationTransaction, zoneIds: readonly string[]): Promise<void> {
    await tx.query('update zone set controller_id = null, station = null where organization_id = $1 and id = any($2::uuid[])', [
      tx.organizationId,
      zoneIds,
    ]);
  },
};
