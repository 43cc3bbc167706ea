import { climateTerm } from '@rillbook/agronomy/water-balance/canopy/maximum-crop-coefficient.js';
import { canopySeries } from '@rillbook/agronomy/water-balance/canopy/canopy-series.js';
import { runDualBalance } from '@rillbook/agronomy/water-balance/dual/dual-balance.kernel.js';
import type { DualSeason } from '@rillbook/agronomy/water-balance/dual/dual-season.js';
import { type KernelDays, kernelDays, kernelZone } from '@rillbook/agronomy/water-balance/dual/dual-series.js';
import { metres, millimetres } from '@rillbook/units/length.js';
import { finiteQuantity, type Quantity } from '@rillbook/units/quantity.js';
import { metresPerSecond } from '@rillbook/units/speed.js';
import fc from 'fast-check';

const DAY = 86_400_000;
const FIRST = Date.parse('2026-02-20');

export const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
export const depth = (max: number) => number(0, max).map(millimetres);
export const perMetre = (value: number) => finiteQuantity<'mm/m'>(value, 'AVAILABLE_WATER_OUT_OF_DOMAIN');

/** The date some days after 20 February 2026. */
export const dateOf = (day: number) => new Date(FIRST + day * DAY).toISOString().slice(0, 10);

const rain = fc.oneof({ weight: 3, arbitrary: fc.constant(millimetres(0)) }, { weight: 1, arbitrary: depth(90) });

/** Days of weather: reference evapotranspiration, rain, wind, humidity. */
const weather = fc
  .array(fc.record({ eto: depth(12), rain, wind: number(0, 9), minimumHumidity: number(0, 100) }), { minLength: 1, maxLength: 100 })
  .map((days) => days.map(({ wind, ...day }, at) => ({ ...day, date: dateOf(at), windSpeedAt2M: metresPerSecond(wind) })));

const days = (most: number) => fc.integer({ min: 0, max: most });
const plants = fc
  .record({
    stages: fc.record({ initialDays: days(30), developmentDays: days(30), midDays: days(30), lateDays: days(20) }),
    basalCoefficients: fc.record({ initial: number(0.1, 0.5), mid: number(0.5, 1.25), end: number(0.1, 1.2) }),
    minimumCoefficient: number(0.1, 0.2),
    initialHeight: number(0, 1).map(metres),
    growth: number(0, 4),
    initialRootDepth: number(50, 500).map(millimetres),
    rooting: number(0, 1500),
  })
  .map(({ growth, rooting, ...rest }) => ({
    ...rest,
    fullHeight: metres(rest.initialHeight + growth),
    fullRootDepth: millimetres(rest.initialRootDepth + rooting),
  }));

const zone = fc
  .record({
    rew: number(1, 12),
    slowing: number(0.5, 30),
    availableWater: number(20, 250).map(perMetre),
    tableFraction: number(0.1, 0.8),
    mulchCover: number(0, 1),
    curveNumber: fc.option(number(30, 100)),
    capillaryRise: fc.oneof(fc.constant(millimetres(0)), depth(2)),
  })
  .map(({ rew, slowing, ...rest }) => ({
    ...rest,
    readilyEvaporableWater: millimetres(rew),
    totalEvaporableWater: millimetres(rew + slowing),
  }));

const event = fc.record({ day: days(99), irrigation: depth(40), wettedFraction: number(0.05, 1) });

/** Any season that the dual balance believes. */
export const dualSeasons: fc.Arbitrary<DualSeason> = fc
  .record({
    weather,
    plants,
    zone,
    events: fc.array(event, { maxLength: 25 }),
    dry: number(0, 1),
    dryTop: number(0, 1),
    wetted: number(0.05, 1),
  })
  .map((made) => ({
    days: made.weather,
    plants: made.plants,
    zone: made.zone,
    events: made.events
      .filter(({ day }) => day < made.weather.length)
      .map(({ day, irrigation, wettedFraction }) => ({ date: dateOf(day), irrigation, wettedFraction })),
    start: {
      surfaceDepletion: millimetres(made.dryTop * made.zone.totalEvaporableWater),
      depletion: millimetres((made.dry * made.zone.availableWater * made.plants.initialRootDepth) / 1000),
      wettedFraction: made.wetted,
    },
  }));

/** The same season through the arrays of the kernel. */
export function kernelSeason({ days: weatherDays, events, plants: growing, zone: soil, start }: DualSeason): KernelDays {
  const length = weatherDays.length;
  const series = (of: (day: DualSeason['days'][number]) => number) => Float64Array.from(weatherDays, of);
  const irrigation = new Float64Array(length);
  const irrigatedFraction = new Float64Array(length).fill(1);
  const widest = new Map<number, number>();
  for (const each of events) {
    const at = weatherDays.findIndex(({ date }) => date === each.date);
    irrigation[at] = (irrigation[at] ?? 0) + each.irrigation;
    widest.set(at, Math.max(widest.get(at) ?? 0, each.wettedFraction));
  }
  for (const [at, share] of widest) irrigatedFraction[at] = share;
  const water = { eto: series(({ eto }) => eto), rain: series((day) => day.rain), irrigation, irrigatedFraction };
  const climate = series(({ windSpeedAt2M, minimumHumidity }) => climateTerm(windSpeedAt2M, minimumHumidity));
  const written = kernelDays(length);
  runDualBalance(water, canopySeries(growing, climate), kernelZone(soil, start), written);
  return written;
}

/** Sums as quantities, as the closing depletion takes them. */
export const quantities = <Name extends string>(sums: Readonly<Record<Name, number>>) =>
  Object.fromEntries(Object.entries<number>(sums).map(([name, sum]) => [name, millimetres(sum)])) as Record<Name, Quantity<'mm'>>;
