import { needByMonth } from '@rillbook/agronomy/water-balance/need-by-month.kernel.js';
import type { NeededDepths, NeedingZone } from './needing-zone.js';
import { DAYS_BEFORE_MONTH, type WeatherSeries } from './weather-series.js';

/** A month whose need is below this share of what it would be without rain is wet: there slopes say too little. Seen against random draws. [–] */
const WET_SHARE = 0.15;

/** Nodes above the mean and their weights in the Gauss-Hermite rule of five nodes, in standard deviations; below the mean a wet month needs nothing. */
const NODES = [
  { at: 1.355_626_179_974_266, weight: 0.222_075_922_005_613 },
  { at: 2.856_970_013_872_806, weight: 0.011_257_411_327_721 },
] as const;
const WEIGHT_AT_MEAN = 8 / 15;

/** What the month's own inputs are, beside the zone: its days, and how uncertain its rain is. */
export interface WetMonth {
  readonly weather: WeatherSeries;
  readonly firstDay: number;
  readonly days: number;
  readonly rainRelativeSd: number;
}

/**
 * What uncertain inputs do to the need of a month in which rain covered nearly all of it: nothing on one side and something on the other, so that
 * half the difference is too small, or none.
 *
 * Plant factor, evapotranspiration, rain and storage are moved together towards more need, each by its part in what a month without corners
 * would vary; need at the mean and at two moved points gives the standard deviation (Gauss-Hermite, five nodes, the lower two nothing), which is
 * shared out by the same parts.
 *
 * @param zone - The zone. [mm]
 * @param month - The month with its weather. [mm], one per day
 * @param found - What the zone needed, and half the differences. [mm]
 * @returns The effects of the inputs; those found where the month is not wet, or already vary more. [mm]
 * @source Abramowitz and Stegun (1964), table 25.10 for the nodes, turned to the standard normal; the sharing out is an assumption.
 */
export function wetMonthMoves(zone: NeedingZone, month: WetMonth, found: Pick<NeededDepths, 'netMm' | 'moved'>): NeededDepths['moved'] {
  const parts = partsOf(zone, month);
  if (parts === null || found.netMm >= WET_SHARE * parts.dryNeedMm) return found.moved;
  const needs = NODES.map(({ at, weight }) => ({ need: needMoved(zone, month, parts, at), weight }));
  const mean = needs.reduce((sum, { need, weight }) => sum + weight * need, WEIGHT_AT_MEAN * found.netMm);
  const square = needs.reduce((sum, { need, weight }) => sum + weight * need ** 2, WEIGHT_AT_MEAN * found.netMm ** 2);
  const sd = Math.sqrt(Math.max(0, square - mean ** 2));
  const { plantFactor, rootStorage, eto, rain } = found.moved;
  if (sd <= Math.hypot(plantFactor, rootStorage, eto, rain)) return found.moved;
  return { plantFactor: sd * parts.plant, rootStorage: -sd * parts.storage, eto: sd * parts.eto, rain: -sd * parts.rain };
}

/** Parts of the inputs in what varies, their squares together 1; and the need without rain. */
interface Parts {
  readonly plant: number;
  readonly storage: number;
  readonly eto: number;
  readonly rain: number;
  readonly dryNeedMm: number;
}

function partsOf(zone: NeedingZone, { weather, firstDay, days, rainRelativeSd }: WetMonth): Parts | null {
  let [etc, etcSd, rain, rainSd] = [0, 0, 0, 0];
  for (let day = firstDay - weather.firstDay; day < firstDay - weather.firstDay + days; day += 1) {
    const known = knownDay(weather, day);
    if (!known) continue;
    rainSd += Math.hypot(rainRelativeSd * known.rain, known.rainSd);
    etc += zone.plantCoefficient * known.eto;
    etcSd += zone.plantCoefficient * known.eto * known.etoSd;
    rain += known.rain;
  }
  // Rain beyond what the plants could use does not vary their need.
  const used = rain > etc ? etc / rain : 1;
  const [plant, storage, eto, rainPart] = [etc * zone.plantRelativeSd, zone.rawMm * zone.storageRelativeSd, etcSd, rainSd * used];
  const all = Math.hypot(plant, storage, eto, rainPart);
  return all > 0 ? { plant: plant / all, storage: storage / all, eto: eto / all, rain: rainPart / all, dryNeedMm: etc } : null;
}

function knownDay({ etoMm, rainMm, etoRelativeSd, rainSdMm }: WeatherSeries, at: number) {
  const [eto, rain] = [etoMm[at] ?? Number.NaN, rainMm[at] ?? Number.NaN];
  return Number.isNaN(eto + rain) ? null : { eto, rain, etoSd: etoRelativeSd[at] ?? 0, rainSd: rainSdMm?.[at] ?? 0 };
}

// Need of the month with every input moved towards more by its part of so many standard deviations.
function needMoved(zone: NeedingZone, { weather, firstDay, days, rainRelativeSd }: WetMonth, parts: Parts, at: number): number {
  const length = DAYS_BEFORE_MONTH + days;
  const [eto, rain] = [new Float64Array(length), new Float64Array(length)];
  for (let day = 0; day < length; day += 1) {
    const place = firstDay - DAYS_BEFORE_MONTH + day - weather.firstDay;
    const known = knownDay(weather, place);
    if (!known) continue;
    eto[day] = known.eto * (1 + at * parts.eto * known.etoSd);
    rain[day] = Math.max(0, known.rain - at * parts.rain * Math.hypot(rainRelativeSd * known.rain, known.rainSd));
  }
  const sums = new Float64Array(1);
  needByMonth(
    { eto, rain },
    { starts: Int32Array.of(DAYS_BEFORE_MONTH), ends: Int32Array.of(length), warmUpDays: DAYS_BEFORE_MONTH },
    zone.plantCoefficient * (1 + at * parts.plant * zone.plantRelativeSd),
    zone.rawMm * Math.max(0, 1 - at * parts.storage * zone.storageRelativeSd),
    { depletion: new Float64Array(length + 1), irrigation: new Float64Array(length), sums, ofMonths: null },
  );
  return sums[0] as number;
}
