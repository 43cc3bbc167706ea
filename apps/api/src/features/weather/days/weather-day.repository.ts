import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { WeatherDayRow } from './weather-day.entity.js';

interface Last {
  readonly stationId: string;
  readonly day: string;
}

/** All SQL of weather days. */
export const weatherDays = {
  /** The newest day of some stations; a station without days has none. */
  lastOf(tx: OrganizationTransaction, stationIds: readonly string[]): Promise<Last[]> {
    return tx.query<Last>(
      'select station_id as "stationId", max(day)::text as day from weather_day where organization_id = $1 and station_id = any($2::uuid[]) group by station_id',
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
