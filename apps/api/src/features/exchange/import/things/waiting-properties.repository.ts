import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';

/** A property whose row named a weather station that is not known. */
export interface WaitingProperty {
  readonly id: string;
  readonly station: string;
  readonly typed: Record<string, string>;
}

/** The properties whose rows named one of these stations before it was known. */
export function propertiesThatWait(tx: OrganizationTransaction, stations: readonly string[]): Promise<WaitingProperty[]> {
  return tx.query<WaitingProperty>(
    `select id, typed, normalize(btrim(typed ->> 'weather_station'), nfc) as station from property
      where organization_id = $1 and retired_at is null and weather_station_id is null
        and normalize(btrim(typed ->> 'weather_station'), nfc) = any($2::text[])`,
    [tx.organizationId, stations],
  );
}
