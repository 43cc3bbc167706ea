import { defineLoader } from '../../../platform/graphql/loader.js';
import { weatherDays } from './weather-day.repository.js';

/** The newest day that a station has, as YYYY-MM-DD; null without days. */
export const lastDayOfStation = defineLoader<string, string | null>(
  async (tx, ids) => new Map((await weatherDays.lastOf(tx, ids)).map(({ stationId, day }) => [stationId, day])),
  null,
);
