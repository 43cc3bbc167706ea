import type { WeatherDay } from '@rillbook/agronomy/weather/weather-day.js';

const FREEZING_C = 0;
const MONTHS = 12;

/**
 * Calendar months in which the lowest temperature of any day measured was at or below freezing, in the order of the cold season: it begins
 * after the most months without frost. Null where no lowest temperature is known.
 */
export function frostMonths(
  measured: ReadonlyMap<string, WeatherDay>,
): { readonly months: readonly number[]; readonly measuredDays: number } | null {
  const days = [...measured].flatMap(([date, { tmin }]) => (tmin === null ? [] : [{ month: Number(date.slice(5, 7)), tmin }]));
  if (!days.length) return null;
  const months = [...new Set(days.filter(({ tmin }) => tmin <= FREEZING_C).map(({ month }) => month))].sort((a, b) => a - b);
  return { months: bySeason(months), measuredDays: days.length };
}

function bySeason(months: readonly number[]): readonly number[] {
  const since = months.map((month, at) => (month - (months.at(at - 1) ?? month) + MONTHS) % MONTHS);
  const first = since.indexOf(Math.max(...since));
  return months.length ? [...months.slice(first), ...months.slice(0, first)] : months;
}
