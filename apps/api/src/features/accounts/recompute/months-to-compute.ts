import { dateOfDayNumber } from '@rillbook/irrigation/calendar/local-date.js';
import type { EtoSeries } from '../gather/eto-series.js';
import type { PropertyFacts } from '../gather/property-facts.js';

const MOST_MONTHS = 60;

function monthsBetween(first: string, last: string): string[] {
  const months: string[] = [];
  let [year, month] = first.split('-').map(Number) as [number, number];
  for (let at = first; at <= last; at = `${year}-${String(month).padStart(2, '0')}`) {
    months.push(at);
    month += 1;
    if (month > 12) [year, month] = [year + 1, 1];
  }
  return months;
}

/**
 * The months that a property has an account of, oldest first: from the first month with a reading, a bill, usage or
 * settings, but not before its weather, to the organization's month under way; none where there is no weather.
 */
export function monthsToCompute(facts: PropertyFacts, eto: EtoSeries, today: string): string[] {
  if (!eto.days.length) return [];
  const days = [
    ...facts.readings.map((reading) => reading.localDay),
    ...facts.usageDays.map((day) => day.dayNumber),
    ...facts.bills.map((bill) => bill.startDay),
  ].map((day) => dateOfDayNumber(day));
  const first = [...days, ...facts.settings.map((fact) => fact.localTime.slice(0, 10))].sort()[0] ?? eto.days.at(-1)!.date;
  const from = [first, eto.days[0]!.date].sort()[1]!.slice(0, 7);
  const last = today.slice(0, 7);
  return monthsBetween(from, last).slice(-MOST_MONTHS);
}
