import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
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

  /** Keeps a day, in place of the one that was there; the height of the anemometer stays when nobody states another. */
  async keep(tx: OrganizationTransaction, values: Omit<WeatherDayRow, 'organizationId' | 'windHeightM'>): Promise<WeatherDayRow> {
    const table = tx.of(WeatherDayRow);
    await table.upsert({ ...values, organizationId: tx.organizationId }, ['organizationId', 'stationId', 'day']);
    return table.findOneByOrFail({ organizationId: tx.organizationId, stationId: values.stationId, day: values.day });
  },
};
