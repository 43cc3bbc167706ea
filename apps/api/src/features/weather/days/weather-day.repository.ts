import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import type { RecentRain } from './recent-rain.type.js';
import { WeatherDayRow } from './weather-day.entity.js';

/** The first and the last day that a station has. */
export interface DaySpan {
  readonly first: string;
  readonly last: string;
}

/** All SQL of weather days. */
export const weatherDays = {
  /** The span of days of some stations; a station without days has none. */
  spansOf(tx: OrganizationTransaction, stationIds: readonly string[]): Promise<(DaySpan & { readonly stationId: string })[]> {
    return tx.query(
      'select station_id as "stationId", min(day)::text as first, max(day)::text as last from weather_day where organization_id = $1 and station_id = any($2::uuid[]) group by station_id',
      [tx.organizationId, stationIds],
    );
  },

  /** Rain of a span of days, both included, of each station in use that had any; the most first. */
  rainBetween(tx: OrganizationTransaction, from: string, until: string): Promise<RecentRain[]> {
    return tx.query<RecentRain>(
      'select station.id as "stationId", station.name, sum(day.rain_mm) as "rainMm", max(day.day)::text as "lastRainOn" from weather_station station join weather_day day on day.organization_id = station.organization_id and day.station_id = station.id where station.organization_id = $1 and station.retired_at is null and day.day between $2 and $3 and day.rain_mm > 0 group by station.id, station.name order by 3 desc, station.name',
      [tx.organizationId, from, until],
    );
  },

  /** Keeps a day, in place of the one that was there; the height of the anemometer stays when nobody states another. */
  async keep(tx: OrganizationTransaction, values: Omit<WeatherDayRow, 'organizationId' | 'windHeightM'>): Promise<WeatherDayRow> {
    const table = tx.of(WeatherDayRow);
    await table.upsert({ ...values, organizationId: tx.organizationId }, ['organizationId', 'stationId', 'day']);
    return table.findOneByOrFail({ organizationId: tx.organizationId, stationId: values.stationId, day: values.day });
  },
};
