import { dateOfDayNumber, dayNumberOfDate, daysOfMonth } from '@rillbook/irrigation/calendar/local-date.js';
import { type WhatIfZone, whatIfYear } from '@rillbook/metering/what-if/what-if-year.js';

/** A zone as its accounts take it; `isCounted` where its need is part of the property's account. */
export interface ZoneOfYear extends Omit<WhatIfZone, 'id'> {
  readonly zoneId: string;
  readonly assumed: readonly string[];
  readonly isCounted: boolean;
}

/** A year of weather, and the zones by the months in which they were the same. */
export interface YearOfProperty {
  readonly weather?: {
    readonly firstDay: string;
    readonly etoMm: readonly (number | null)[];
    readonly rainMm: readonly (number | null)[];
  } | null;
  readonly stages: readonly { readonly months: readonly string[]; readonly zones: readonly ZoneOfYear[] }[];
}

/** What would be otherwise with a zone. */
export type ChangeOfZone = (zone: ZoneOfYear) => ZoneOfYear;

/** Need by month of one zone, or of all that the account counts; null where it is not known. [L] */
export type AskYear = (zoneId: string | null, change: ChangeOfZone) => readonly (number | null)[];

const known = (values: readonly (number | null)[]): Float64Array => Float64Array.from(values, (value) => value ?? Number.NaN);

/** Makes a year ready for questions; null where no weather is known. */
export function askingYear({ weather, stages }: YearOfProperty): AskYear | null {
  if (!weather) return null;
  const series = {
    firstDay: dayNumberOfDate(weather.firstDay),
    etoMm: known(weather.etoMm),
    rainMm: known(weather.rainMm),
    etoRelativeSd: new Float64Array(weather.etoMm.length),
  };
  const ready = stages.map(({ months, zones }) => ({ months, zones, ask: whatIfYear(series, months.map(wholeMonth)) }));
  return (zoneId, change) =>
    ready.flatMap(({ months, zones, ask }) => {
      const chosen = zones.filter((zone) => (zoneId === null ? zone.isCounted : zone.zoneId === zoneId));
      if (chosen.length === 0) return months.map(() => null);
      return ask(chosen.map((zone) => ({ ...change(zone), id: zone.zoneId }))).litresByMonth;
    });
}

function wholeMonth(month: string) {
  const { firstDay, days } = daysOfMonth(month);
  return { month, through: dateOfDayNumber(firstDay + days - 1) };
}

/** A sum with a part that is not known is not known. */
export const sumOf = (values: readonly (number | null)[]): number | null =>
  values.reduce<number | null>((sum, value) => (sum === null || value === null ? null : sum + value), 0);
