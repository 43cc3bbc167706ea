import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { grouped } from '../../../platform/graphql/loader.js';

/** A station as its days are reckoned with: where it is, whether it is in use, and the newest day that it has. */
export interface StationRow {
  readonly id: string;
  readonly name: string;
  readonly latitude: number;
  readonly longitude: number;
  readonly elevationM: number | null;
  readonly isInUse: boolean;
  /** YYYY-MM-DD; null without days */
  readonly lastDay: string | null;
}

/** The values of a day, by the names of the library. */
export interface RecordedValues {
  readonly stationId: string;
  readonly date: string;
  readonly tmax: number | null;
  readonly tmin: number | null;
  readonly rhmax: number | null;
  readonly rhmin: number | null;
  readonly dewPoint: number | null;
  readonly wind: number | null;
  readonly windHeight: number | null;
  readonly solar: number | null;
  readonly rain: number | null;
  readonly givenEto: number | null;
}

/** What the days of stations are reckoned from, in one statement each however many stations they are. */
export const stationRecords = {
  /** Every station of the organization, retired ones too. */
  stations(tx: OrganizationTransaction): Promise<StationRow[]> {
    return tx.query<StationRow>(
      `select id, name, latitude, longitude, elevation_m as "elevationM", retired_at is null as "isInUse",
         (select max(day)::text from weather_day where weather_day.organization_id = weather_station.organization_id and station_id = weather_station.id) as "lastDay"
       from weather_station where organization_id = $1 order by name, id`,
      [tx.organizationId],
    );
  },

  /** All days of some stations, oldest first. */
  async days(tx: OrganizationTransaction, stationIds: readonly string[]): Promise<Map<string, RecordedValues[]>> {
    const rows = await tx.query<RecordedValues>(
      `select station_id as "stationId", day::text as date, tmax_c as tmax, tmin_c as tmin, rh_max_percent as rhmax, rh_min_percent as rhmin,
         dew_point_c as "dewPoint", wind_m_per_s as wind, wind_height_m as "windHeight", solar_mj_per_m2 as solar, rain_mm as rain, given_eto_mm as "givenEto"
       from weather_day where organization_id = $1 and station_id = any($2::uuid[]) order by station_id, day`,
      [tx.organizationId, stationIds],
    );
    return grouped(rows, (row) => row.stationId);
  },
};
