import { windSpeedAt2M } from '@rillbook/agronomy/evapotranspiration/air/wind-speed-at-2-m.js';
import { stageCoefficient } from '@rillbook/agronomy/water-balance/canopy/growth-stages.js';
import { type DualSeason, dualSeason } from '@rillbook/agronomy/water-balance/dual/dual-season.js';
import { totalAvailableWater } from '@rillbook/agronomy/water-balance/root-zone/total-available-water.js';
import { waterStressCoefficient } from '@rillbook/agronomy/water-balance/root-zone/water-stress-coefficient.js';
import { closingDepletion } from '@rillbook/agronomy/water-balance/season/closing-depletion.js';
import { totalEvaporableWater } from '@rillbook/agronomy/water-balance/surface/total-evaporable-water.js';
import { millimetres } from '@rillbook/units/length.js';
import { finiteQuantity } from '@rillbook/units/quantity.js';
import { metresPerSecond } from '@rillbook/units/speed.js';
import { describe, expect, it } from 'vitest';
import { expectWithin } from '../expect-within.js';
import { expectGolden } from '../golden-check.js';
import { publishedDays, publishedMonths } from './cotton-days.js';
import { firstDate, irrigations, plants, singleCoefficients, soil, weather, windHeight } from './cotton-season.js';
import { checks } from './values.js';

const DAY = 86_400_000;
/** Half of the third decimal, and a little for the decimal's own rounding in binary. */
const PRINTED = 0.0005 + 1e-9;
const perMetre = (value: number) => finiteQuantity<'mm/m'>(value, 'AVAILABLE_WATER_OUT_OF_DOMAIN');

const surface = totalEvaporableWater(soil.fieldCapacity, soil.wiltingPoint, millimetres(soil.evaporationDepth));

const season: DualSeason = {
  days: weather.map(([eto, wind, minimumHumidity, rain], day) => ({
    date: new Date(Date.parse(firstDate) + day * DAY).toISOString().slice(0, 10),
    eto: millimetres(eto),
    rain: millimetres(rain),
    windSpeedAt2M: windSpeedAt2M(metresPerSecond(wind), windHeight),
    minimumHumidity,
  })),
  events: irrigations.map(([date, depth, wettedFraction]) => ({ date, irrigation: millimetres(depth), wettedFraction })),
  plants,
  zone: {
    totalEvaporableWater: surface,
    readilyEvaporableWater: millimetres(soil.readilyEvaporableWater),
    availableWater: perMetre(1000 * (soil.fieldCapacity - soil.wiltingPoint)),
    tableFraction: soil.tableFraction,
    mulchCover: 0,
    curveNumber: null,
    capillaryRise: millimetres(0),
  },
  start: {
    surfaceDepletion: surface,
    depletion: totalAvailableWater(soil.fieldCapacity, soil.wiltingPoint, plants.initialRootDepth),
    wettedFraction: 1,
  },
};

const balance = dualSeason(season);
const byDate = new Map(balance.days.map((day, at) => [day.date, columnsOf(day, at)]));

function columnsOf(day: (typeof balance.days)[number], at: number): Readonly<Record<string, number>> {
  const single = stageCoefficient(at, plants.stages, singleCoefficients);
  const { basalCoefficient: kcb, evaporationCoefficient: ke, waterStressCoefficient: ks, eto } = day;
  return {
    ETref: eto,
    Kcm: single,
    ETcm: single * eto,
    tKcb: kcb,
    Kcb: kcb,
    ETcb: kcb * eto,
    h: day.plantHeight,
    Kcmax: day.maximumCoefficient,
    ETmax: day.maximumCoefficient * eto,
    fc: day.canopyCover,
    fw: day.wettedFraction,
    few: day.exposedWettedFraction,
    De: day.surfaceDepletion,
    Kr: day.evaporationReduction,
    Ke: ke,
    E: day.evaporation,
    DPe: day.surfacePercolation,
    Kc: ke + kcb,
    ETc: day.etc,
    TAW: day.totalAvailableWater,
    Zr: day.rootDepth / 1000,
    p: day.depletionFraction,
    RAW: day.readilyAvailableWater,
    Ks: ks,
    Ka: ke + ks * kcb,
    ETa: day.evapotranspiration,
    T: day.transpiration,
    DP: day.deepPercolation,
    Dr: day.depletion,
    fDr: day.depletion / day.totalAvailableWater,
    Ksend: waterStressCoefficient(day.depletion, day.totalAvailableWater, day.readilyAvailableWater),
    Irrig: day.irrigation,
    Rain: day.rain,
    Runoff: day.runoff,
  };
}

const months = new Map<string, Readonly<Record<string, number>>>(
  balance.months.map((month) => [
    month.month,
    {
      dayCount: month.dayCount,
      ETref: month.eto,
      Rain: month.rain,
      Irrig: month.irrigation,
      ETc: month.etc,
      E: month.evaporation,
      T: month.transpiration,
      ETa: month.evapotranspiration,
      DP: month.deepPercolation,
      Runoff: month.runoff,
    },
  ]),
);

/** A printed table: its first column, and the others by name. */
function rowsOf(table: string): readonly (readonly [string, Readonly<Record<string, number>>])[] {
  const [head = [], ...rows] = table
    .trim()
    .split('\n')
    .map((line) => line.split(' '));
  return rows.map(([first = '', ...cells]) => [first, Object.fromEntries(cells.map((cell, at) => [head[at + 1], Number(cell)]))]);
}

describe('Dry cotton at Maricopa in 2013 (USDA-ARS), dual crop coefficient', () => {
  const days = rowsOf(publishedDays);

  it.each(days)('every column of %s as printed', (date, published) => {
    const ours = byDate.get(date) ?? {};
    for (const [name, value] of Object.entries(published)) expectWithin(ours[name] ?? Number.NaN, value, PRINTED);
  });

  it('some dozens of days, each with all columns', () => {
    expect(days.length).toBeGreaterThanOrEqual(36);
    for (const [, published] of days) expect(Object.keys(published)).toEqual(Object.keys(byDate.get(firstDate) ?? {}));
  });

  it.each(rowsOf(publishedMonths))('the sums of %s', (month, published) => {
    const ours = months.get(month) ?? {};
    expect(Object.keys(published)).toEqual(Object.keys(ours));
    expect(ours['dayCount']).toBe(published['dayCount']);
    for (const [name, value] of Object.entries(published))
      expectWithin(ours[name] ?? Number.NaN, value, (published['dayCount'] ?? 0) * PRINTED);
  });

  it('rz-015: the whole season', () => {
    const { eto, evapotranspiration, evaporation, transpiration, deepPercolation, irrigation, rain } = balance.total;
    expectGolden(checks['rz-015'], {
      ETref: eto,
      ETa: evapotranspiration,
      E: evaporation,
      T: transpiration,
      DP: deepPercolation,
      Irrig: irrigation,
      Rain: rain,
      Dr_ini: season.start.depletion,
      Dr_end: balance.days.at(-1)?.depletion ?? Number.NaN,
    });
  });

  it('loses no water, and asks nothing of an empty root zone', () => {
    const sums = Object.fromEntries(Object.entries(balance.total).map(([name, sum]) => [name, millimetres(sum)])) as {
      [Name in keyof typeof balance.total]: ReturnType<typeof millimetres>;
    };
    expectWithin(balance.days.at(-1)?.depletion ?? Number.NaN, closingDepletion(season.start.depletion, sums), 1e-9);
    expect(balance.total.shortfall).toBe(0);
  });
});
