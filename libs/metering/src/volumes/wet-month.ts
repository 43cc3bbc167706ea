import { needByMonth, type NeedSeries, type NeedWritten } from '@rillbook/agronomy/water-balance/need-by-month.kernel.js';
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
  const known = knownDays(weather, rainRelativeSd);
  let [etc, etcSd, rain, rainSd] = [0, 0, 0, 0];
  const begin = Math.max(0, firstDay - weather.firstDay);
  const end = Math.min(known.rain.length, firstDay - weather.firstDay + days);
  for (let day = begin; day < end; day += 1) {
    const [eto, fallen] = [known.eto[day] as number, known.rain[day] as number];
    if (Number.isNaN(fallen)) continue;
    rainSd += known.rainSd[day] as number;
    etc += zone.plantCoefficient * eto;
    etcSd += zone.plantCoefficient * eto * (known.etoSd[day] as number);
    rain += fallen;
  }
  // Rain beyond what the plants could use does not vary their need.
  const used = rain > etc ? etc / rain : 1;
  const [plant, storage, eto, rainPart] = [etc * zone.plantRelativeSd, zone.rawMm * zone.storageRelativeSd, etcSd, rainSd * used];
  const all = Math.hypot(plant, storage, eto, rainPart);
  return all > 0 ? { plant: plant / all, storage: storage / all, eto: eto / all, rain: rainPart / all, dryNeedMm: etc } : null;
}

/** Weather with how uncertain each day of it is; rain is not a number on a day that is not known. */
interface KnownDays {
  readonly rainRelativeSd: number;
  readonly eto: Float64Array;
  readonly rain: Float64Array;
  readonly etoSd: Float64Array;
  readonly rainSd: Float64Array;
}

/** A station's weather leads up to the months of many zones: it is gone through once. */
const knownOfWeather = new WeakMap<WeatherSeries, KnownDays>();

function knownDays(weather: WeatherSeries, rainRelativeSd: number): KnownDays {
  const present = knownOfWeather.get(weather);
  if (present?.rainRelativeSd === rainRelativeSd) return present;
  const { etoMm, rainMm, etoRelativeSd, rainSdMm } = weather;
  const column = () => new Float64Array(etoMm.length);
  const known = { rainRelativeSd, eto: column(), rain: column(), etoSd: column(), rainSd: column() };
  for (let day = 0; day < etoMm.length; day += 1) {
    const [eto, rain] = [etoMm[day] ?? Number.NaN, rainMm[day] ?? Number.NaN];
    known.eto[day] = eto;
    known.rain[day] = Number.isNaN(eto) ? Number.NaN : rain;
    known.etoSd[day] = etoRelativeSd[day] ?? 0;
    known.rainSd[day] = Math.hypot(rainRelativeSd * rain, rainSdMm?.[day] ?? 0);
  }
  knownOfWeather.set(weather, known);
  return known;
}

/** Room for a month and the days that lead up to it. */
interface Room {
  readonly weather: NeedSeries;
  readonly written: NeedWritten;
}

const roomOf = (length: number): Room => ({
  weather: { eto: new Float64Array(length), rain: new Float64Array(length) },
  written: { depletion: new Float64Array(length + 1), irrigation: new Float64Array(length), sums: new Float64Array(1), ofMonths: null },
});

/** One month is computed at a time. */
let room = roomOf(DAYS_BEFORE_MONTH + 31);

// Need of the month with every input moved towards more by its part of so many standard deviations.
function needMoved(zone: NeedingZone, { weather, firstDay, days, rainRelativeSd }: WetMonth, parts: Parts, at: number): number {
  const known = knownDays(weather, rainRelativeSd);
  const [ofEto, ofRain] = [at * parts.eto, at * parts.rain];
  const from = firstDay - DAYS_BEFORE_MONTH - weather.firstDay;
  const length = DAYS_BEFORE_MONTH + days;
  if (length > room.weather.eto.length) room = roomOf(length);
  const { eto, rain } = room.weather;
  for (let day = 0; day < length; day += 1) {
    const fallen = known.rain[from + day] ?? Number.NaN;
    const isKnown = !Number.isNaN(fallen);
    eto[day] = isKnown ? (known.eto[from + day] as number) * (1 + ofEto * (known.etoSd[from + day] as number)) : 0;
    rain[day] = isKnown ? Math.max(0, fallen - ofRain * (known.rainSd[from + day] as number)) : 0;
  }
  const span = { starts: Int32Array.of(DAYS_BEFORE_MONTH), ends: Int32Array.of(length), warmUpDays: DAYS_BEFORE_MONTH };
  const coefficient = zone.plantCoefficient * (1 + at * parts.plant * zone.plantRelativeSd);
  const rawMm = zone.rawMm * Math.max(0, 1 - at * parts.storage * zone.storageRelativeSd);
  needByMonth(room.weather, span, coefficient, rawMm, room.written);
  return room.written.sums[0] as number;
}
