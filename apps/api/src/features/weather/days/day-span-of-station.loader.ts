import { defineLoader } from '../../../platform/graphql/loader.js';
import { type DaySpan, weatherDays } from './weather-day.repository.js';

/** The first and the newest day that a station has; null without days. */
export const daySpanOfStation = defineLoader<string, DaySpan | null>(
  async (tx, ids) => new Map((await weatherDays.spansOf(tx, ids)).map(({ stationId, ...span }) => [stationId, span])),
  null,
);
