import { needByMonth } from '@rillbook/agronomy/water-balance/need-by-month.kernel.js';
import type { AccountZone } from '../account/account-input.js';
import { coveredMonth } from '../account/needed/covered-month.js';
import { grossVolume } from '../volumes/gross-volume.js';
import { fillMissingWeather } from '../volumes/missing-weather.js';
import { DAYS_BEFORE_MONTH, type WeatherSeries } from '../volumes/weather-series.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/** What the need of a zone depends on, and so what may be asked otherwise. */
export type WhatIfZone = Pick<AccountZone, 'id' | 'areaM2' | 'plantFactor' | 'density' | 'shade' | 'rawMm' | 'duLq' | 'leachingFraction'>;

/** A month, 'YYYY-MM', and the last complete local date in it or after it; null where no day is complete. */
export interface WhatIfMonth {
  readonly month: string;
  readonly through: string | null;
}

/** Need by zone and month; null where too much of the month's weather is not known. */
export interface WhatIfYear {
  readonly zones: readonly {
    readonly zoneId: string;
    readonly litresByMonth: readonly (number | null)[];
    readonly litres: number | null;
  }[];
  readonly litresByMonth: readonly (number | null)[];
  readonly litres: number | null;
}

/** A year of weather made ready once, for as many questions as are asked of it. */
export type AskWhatIf = (zones: readonly WhatIfZone[]) => WhatIfYear;

/**
 * Makes the weather of some months ready for questions of the kind: what would these zones need if they were planted or watered otherwise.
 *
 * The answer for zones as they are is the need of their month accounts; it has no uncertainty, and fits into a frame of a screen.
 *
 * @param weather - Weather from 90 days before the first month (later if weather starts later). [mm], one per day
 * @param months - Months, oldest first and each once. [code]
 * @returns A function from zones to their need by month. [L]
 * @throws {DomainError} `MONTH_INVALID` or `LOCAL_DATE_INVALID` here; on asking, `UNIFORMITY_OUT_OF_DOMAIN` or `LEACHING_FRACTION_OUT_OF_DOMAIN`.
 * @example whatIfYear(weather, months)(zones.map((zone) => ({ ...zone, plantFactor: 0.3 }))).litres
 */
export function whatIfYear(weather: WeatherSeries, months: readonly WhatIfMonth[]): AskWhatIf {
  const covered = months.map((month) => coveredMonth(month, weather));
  const from = covered.reduce((first, month) => Math.min(first, month.firstDay), Number.POSITIVE_INFINITY) - DAYS_BEFORE_MONTH;
  const length = covered.reduce((until, { firstDay, days }) => Math.max(until, firstDay + days - from), 0);
  const series = knownDays(weather, from, length);
  const spans = {
    starts: Int32Array.from(covered, ({ firstDay }) => firstDay - from),
    ends: Int32Array.from(covered, ({ firstDay, days }) => firstDay + days - from),
    warmUpDays: DAYS_BEFORE_MONTH,
  };
  const written = {
    depletion: new Float64Array(length + 1),
    irrigation: new Float64Array(length),
    sums: new Float64Array(covered.length),
    ofMonths: null,
  };
  const depthsOf = (zone: WhatIfZone): readonly (number | null)[] => {
    needByMonth(series, spans, zone.plantFactor * zone.density * zone.shade, zone.rawMm, written);
    return covered.map(({ days, missing }, month) => (days > 0 ? fillMissingWeather(written.sums[month] as number, missing) : null));
  };
  return (zones) => answer(zones, depthsOf, covered.length);
}

function answer(zones: readonly WhatIfZone[], depthsOf: (zone: WhatIfZone) => readonly (number | null)[], months: number): WhatIfYear {
  const lines = zones.map((zone) => {
    const perMm = grossVolume(1 as Quantity<'mm'>, zone);
    const litresByMonth = depthsOf(zone).map((depth) => (depth === null ? null : depth * perMm));
    return { zoneId: zone.id, litresByMonth, litres: sumOf(litresByMonth) };
  });
  const litresByMonth = Array.from({ length: months }, (_, month) => sumOf(lines.map((line) => line.litresByMonth[month] ?? null)));
  return { zones: lines, litresByMonth, litres: sumOf(litresByMonth) };
}

function sumOf(values: readonly (number | null)[]): number | null {
  return values.reduce<number | null>((sum, value) => (sum === null || value === null ? null : sum + value), 0);
}

// A day that is not known leaves the root zone as it finds it.
function knownDays(weather: WeatherSeries, from: number, length: number) {
  const series = { eto: new Float64Array(length), rain: new Float64Array(length) };
  for (let day = 0; day < length; day += 1) {
    const eto = weather.etoMm[from + day - weather.firstDay] ?? Number.NaN;
    const rain = weather.rainMm[from + day - weather.firstDay] ?? Number.NaN;
    if (Number.isNaN(eto + rain)) continue;
    series.eto[day] = eto;
    series.rain[day] = rain;
  }
  return series;
}
