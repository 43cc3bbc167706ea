import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';

/** The properties named, and those under some weather stations or of some water suppliers. */
export async function touchedProperties(
  tx: OrganizationTransaction,
  propertyIds: readonly string[],
  stationIds: readonly string[],
  supplierIds: readonly string[],
): Promise<string[]> {
  const rows = await tx.query<{ id: string }>(
    `select id from property where organization_id = $1 and retired_at is null
       and (id = any($2::uuid[]) or weather_station_id = any($3::uuid[]) or water_supplier_id = any($4::uuid[])) order by name`,
    [tx.organizationId, propertyIds, stationIds, supplierIds],
  );
  return rows.map((row) => row.id);
}
