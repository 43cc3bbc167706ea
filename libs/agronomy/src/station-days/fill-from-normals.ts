import { type HistoryDay, monthlyNormals } from '../weather/filling/monthly-normals.js';
import type { DayEto, StationDay } from './station-day.js';

/**
 * Of a month at most this share of days is filled from normals, so that a month is mostly weather that came; the month account draws the same
 * line. An assumption.
 */
const LARGEST_SHARE = 0.2;

/**
 * Fills days without reference evapotranspiration from what is usual at the station in that month of the year.
 *
 * Usual is the mean of the history up to the end of the month at hand: what comes later does not change a month that is over.
 *
 * @param days - The days, oldest first, none missing in between. [mm], one per day
 * @param history - Days measured at the station. [mm], one per day
 * @returns The same days; a month that lacks more than a fifth of its days, or has no normal, stays as it is. [mm], one per day
 * @source Common practice; the share is an assumption.
 */
export function fillFromNormals(days: readonly StationDay[], history: readonly HistoryDay[]): readonly StationDay[] {
  const lacking = new Map<string, number>();
  for (const { date, eto } of days) if (eto.etoMm === null) lacking.set(monthOf(date), (lacking.get(monthOf(date)) ?? 0) + 1);
  const normals = new Map<string, DayEto>();
  for (const [month, count] of lacking) {
    const usual = count <= LARGEST_SHARE * daysIn(month) ? normalUntil(month, history) : null;
    if (usual) normals.set(month, usual);
  }
  if (normals.size === 0) return days;
  return days.map((day) => (day.eto.etoMm === null ? { ...day, eto: normals.get(monthOf(day.date)) ?? day.eto } : day));
}

const monthOf = (date: string): string => date.slice(0, 7);

function daysIn(month: string): number {
  const [year, number] = month.split('-').map(Number) as [number, number];
  return new Date(Date.UTC(year, number, 0)).getUTCDate();
}

function normalUntil(month: string, history: readonly HistoryDay[]): DayEto | null {
  const same = history.filter(({ date }) => date.slice(5, 7) === month.slice(5, 7) && monthOf(date) <= month);
  const normal = monthlyNormals(same)[Number(month.slice(5, 7)) - 1]!;
  if (normal.reason !== null) return null;
  const { etoMm, etoRelativeSd: relativeSd, days } = normal;
  return { etoMm, relativeSd, method: null, assumed: [], filling: { from: 'normals', days }, reason: null };
}
