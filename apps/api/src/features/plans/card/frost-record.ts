import type { WeatherDay } from '@rillbook/agronomy/weather/weather-day.js';

const FREEZING_C = 0;

/** Calendar months in which the lowest temperature of any day measured was at or below freezing; null where none is known. */
export function frostMonths(
  measured: ReadonlyMap<string, WeatherDay>,
): { readonly months: readonly number[]; readonly measuredDays: number } | null {
  const days = [...measured].flatMap(([date, { tmin }]) => (tmin === null ? [] : [{ month: Number(date.slice(5, 7)), tmin }]));
  if (!days.length) return null;
  const months = [...new Set(days.filter(({ tmin }) => tmin <= FREEZING_C).map(({ month }) => month))].sort((a, b) => a - b);
  return { months, measuredDays: days.length };
}
