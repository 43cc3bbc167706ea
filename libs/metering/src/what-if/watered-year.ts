import { SEASON_SUMS, seasonByMonth } from '@rillbook/agronomy/water-balance/season/season-by-month.kernel.js';
import { DomainError } from '@rillbook/units/domain-error.js';
import type { AccountZone } from '../account/account-input.js';
import { coveredMonth } from '../account/needed/covered-month.js';
import { grossVolume } from '../volumes/gross-volume.js';
import type { WeatherSeries } from '../volumes/weather-series.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import type { WhatIfMonth } from './what-if-year.js';

/** A zone and how it is watered: minutes by local day from the first month's first day on, as a replay of settings gives them. */
export type WateredZone = Pick<
  AccountZone,
  'areaM2' | 'plantFactor' | 'density' | 'shade' | 'rawMm' | 'tawMm' | 'duLq' | 'leachingFraction'
> & { readonly flowLPerMin: number; readonly minutesByDay: Float64Array };

/** What became of a month's water in a zone; null where weather or watering of a day up to its end is not known. */
export interface WateredMonth {
  readonly month: string;
  /** Days that began with the plants short of water. */
  readonly stressDays: number | null;
  /** Share of the plants' evapotranspiration that they went without, 0 to 1. */
  readonly shortShare: number | null;
  /** Water that went below the roots. */
  readonly lostLitres: number | null;
}

const NOT_KNOWN = { stressDays: null, shortShare: null, lostLitres: null } as const;

/**
 * What watering did to a zone, month by month: days short of water, and water lost below the roots.
 *
 * The root zone begins at RAW and follows rain, watering and evapotranspiration day by day. Of the water through the valve that part counts
 * which the need's definition takes to reach the roots: its inverse, so that watering as needed neither stresses nor loses.
 *
 * @param weather - Weather that covers the months. [mm], one per day
 * @param months - Months one after the other, oldest first. [code]
 * @param zone - The zone and its minutes. [min], one per day
 * @returns One for each month. [L] and [d]
 * @throws {DomainError} `WATERED_MONTHS_OUT_OF_ORDER` when a month is missing or not whole before the last; as `grossVolume` for the zone.
 */
export function wateredYear(weather: WeatherSeries, months: readonly WhatIfMonth[], zone: WateredZone): readonly WateredMonth[] {
  const covered = months.map((month) => coveredMonth(month, weather));
  const begin = covered[0]?.firstDay ?? 0;
  const ends = Int32Array.from(covered, ({ firstDay, days }) => firstDay + days - begin);
  covered.forEach(({ firstDay, month }, at) => {
    if (at > 0 && firstDay - begin !== ends[at - 1]) throw new DomainError('WATERED_MONTHS_OUT_OF_ORDER', { month });
  });
  const length = ends.at(-1) ?? 0;
  const at = begin - weather.firstDay;
  const column = (values: ArrayLike<number>, from: number) => Float64Array.from({ length }, (_, day) => values[from + day] ?? Number.NaN);
  const written = new Float64Array(SEASON_SUMS.length * covered.length);
  const netMmPerMinute = zone.flowLPerMin / grossVolume(1 as Quantity<'mm'>, zone);
  seasonByMonth(
    { eto: column(weather.etoMm, at), rain: column(weather.rainMm, at), minutes: column(zone.minutesByDay, 0) },
    ends,
    {
      plantCoefficient: zone.plantFactor * zone.density * zone.shade,
      totalAvailableWater: zone.tawMm,
      readilyAvailableWater: zone.rawMm,
      rootedFraction: 1,
      retention: Number.POSITIVE_INFINITY,
      irrigationRate: netMmPerMinute,
      depletion: zone.rawMm,
    },
    written,
  );
  return covered.map(({ month, days }, index) => ({ month, ...(days > 0 ? became(written, index, zone.areaM2) : NOT_KNOWN) }));
}

function became(written: Float64Array, month: number, areaM2: number): Omit<WateredMonth, 'month'> {
  const sum = (name: (typeof SEASON_SUMS)[number]) => written[SEASON_SUMS.length * month + SEASON_SUMS.indexOf(name)] as number;
  const [etc, taken, lost] = [sum('etc'), sum('evapotranspiration'), sum('deepPercolation')];
  if (Number.isNaN(etc + taken + lost)) return NOT_KNOWN;
  return { stressDays: sum('stressDays'), shortShare: etc > 0 ? 1 - taken / etc : 0, lostLitres: lost * areaM2 };
}
