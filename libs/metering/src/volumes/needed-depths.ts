import { needByMonth, type NeedMonths, type NeedSeries } from '@rillbook/agronomy/water-balance/need-by-month.kernel.js';
import { DomainError } from '@rillbook/units/domain-error.js';
import type { NeededDepths, NeedingZone } from './needing-zone.js';
import { DAYS_BEFORE_MONTH, type WeatherSeries } from './weather-series.js';
import { wetMonthMoves } from './wet-month.js';

/** A month as it is covered, with the root zones as they were in it: the same number of zones, in the same order, in every month. */
export interface NeedingMonth {
  readonly firstDay: number;
  readonly days: number;
  readonly zones: readonly NeedingZone[];
}

const SAME = ['plantCoefficient', 'rawMm', 'plantRelativeSd', 'storageRelativeSd'] as const;

interface Weathers {
  readonly asItCame: NeedSeries;
  readonly moreEto: NeedSeries;
  readonly lessEto: NeedSeries;
  readonly moreRain: NeedSeries;
  readonly lessRain: NeedSeries;
}

/**
 * Net irrigation that zones needed in some months with the weather that really came, and with each uncertain input moved.
 *
 * Every month has a balance of its own, which begins at RAW 90 days earlier. A day without weather needs an unknown depth and leaves the
 * root zone as it found it. Rain that is itself in doubt on some days is moved by its own deviation too, on all of them the same way.
 *
 * @param weather - Weather that leads up to and covers the months. [mm], one per day
 * @param months - Months, oldest first and not overlapping, with their zones. [d]
 * @param rainRelativeSd - Relative standard deviation of rain at the property. [–]
 * @returns For each month, for each of its zones, the depths. [mm]
 * @throws {DomainError} `ROOT_ZONE_OUT_OF_DOMAIN` when coefficient or storage is below zero or not finite.
 */
export function neededDepths(
  weather: WeatherSeries,
  months: readonly NeedingMonth[],
  rainRelativeSd: number,
): readonly (readonly NeededDepths[])[] {
  const from = months.reduce((first, month) => Math.min(first, month.firstDay), Number.POSITIVE_INFINITY) - DAYS_BEFORE_MONTH;
  const length = months.reduce((until, { firstDay, days }) => Math.max(until, firstDay + days - from), 0);
  const weathers = weathersOnce(weather, from, length, rainRelativeSd);
  const spans: NeedMonths = {
    starts: Int32Array.from(months, (month) => month.firstDay - from),
    ends: Int32Array.from(months, ({ firstDay, days }) => firstDay + days - from),
    warmUpDays: DAYS_BEFORE_MONTH,
  };
  const found: NeededDepths[][] = months.map(() => []);
  const room = { depletion: new Float64Array(length + 1), irrigation: new Float64Array(length) };
  const zones = months[0]?.zones.length ?? 0;
  const keys = new Map<number, string>();
  const keyOf = (begin: number, end: number) => {
    const place = begin * months.length + end;
    const key = keys.get(place) ?? `${spans.starts.subarray(begin, end).join()} ${spans.ends.subarray(begin, end).join()}`;
    keys.set(place, key);
    return key;
  };
  for (let zone = 0; zone < zones; zone += 1) {
    for (let begin = 0; begin < months.length; ) {
      const end = sameUntil(months, zone, begin);
      const like = checked((months[begin] as NeedingMonth).zones[zone]);
      const part = { ...spans, starts: spans.starts.subarray(begin, end), ends: spans.ends.subarray(begin, end) };
      const depths = weathers.depthsOnce(like, keyOf(begin, end), () =>
        depthsOfZone(like, part, weathers, room).map((each, at) => {
          const { firstDay, days } = months[begin + at] as NeedingMonth;
          return { ...each, moved: wetMonthMoves(like, { weather, firstDay, days, rainRelativeSd }, each) };
        }),
      );
      depths.forEach((each, month) => (found[begin + month] as NeededDepths[]).push(each));
      begin = end;
    }
  }
  return found;
}

/** So many root zones are remembered: those of the large portfolio's stations, and few enough to hold in memory. */
const MOST_REMEMBERED = 2000;

/** Of one station so many spans of days are held. */
const MOST_SPANS = 8;

/** The depths of root zones by their weather, the longest remembered first. */
const remembered = new Map<string, readonly NeededDepths[]>();
const weathersKnown = new WeakMap<WeatherSeries, Map<string, WeathersOfSpan>>();
let weathersCounted = 0;

/** The weathers of some days of a series. Zones with the same plants on the same soil under them needed the same depth: it is computed once. */
class WeathersOfSpan implements Weathers {
  readonly asItCame: NeedSeries;
  readonly moreEto: NeedSeries;
  readonly lessEto: NeedSeries;
  readonly moreRain: NeedSeries;
  readonly lessRain: NeedSeries;
  private readonly place = (weathersCounted += 1);

  constructor({ asItCame, moreEto, lessEto, moreRain, lessRain }: Weathers) {
    this.asItCame = asItCame;
    this.moreEto = moreEto;
    this.lessEto = lessEto;
    this.moreRain = moreRain;
    this.lessRain = lessRain;
  }

  depthsOnce(zone: NeedingZone, months: string, compute: () => readonly NeededDepths[]): readonly NeededDepths[] {
    const { plantCoefficient, rawMm, plantRelativeSd, storageRelativeSd } = zone;
    const key = `${this.place} ${plantCoefficient} ${rawMm} ${plantRelativeSd} ${storageRelativeSd} ${months}`;
    const present = remembered.get(key);
    if (present) return present;
    const depths = compute();
    const oldest = remembered.size < MOST_REMEMBERED ? undefined : remembered.keys().next().value;
    if (oldest !== undefined) remembered.delete(oldest);
    remembered.set(key, depths);
    return depths;
  }
}

function weathersOnce(weather: WeatherSeries, from: number, length: number, rainRelativeSd: number): WeathersOfSpan {
  const spans = weathersKnown.get(weather) ?? new Map<string, WeathersOfSpan>();
  weathersKnown.set(weather, spans);
  const key = `${from} ${length} ${rainRelativeSd}`;
  const present = spans.get(key) ?? new WeathersOfSpan(weathersOf(weather, from, length, rainRelativeSd));
  if (spans.size === MOST_SPANS && !spans.has(key)) spans.clear();
  spans.set(key, present);
  return present;
}

// A zone that is the same in the next month can go on with the balance of the month before.
function sameUntil(months: readonly NeedingMonth[], zone: number, begin: number): number {
  const first = months[begin]?.zones[zone];
  let end = begin + 1;
  while (end < months.length && isSame(first, months[end]?.zones[zone])) end += 1;
  return end;
}

function isSame(one: NeedingZone | undefined, other: NeedingZone | undefined): boolean {
  return one !== undefined && other !== undefined && SAME.every((name) => one[name] === other[name]);
}

function depthsOfZone(
  zone: NeedingZone,
  months: NeedMonths,
  weathers: Weathers,
  room: { readonly depletion: Float64Array; readonly irrigation: Float64Array },
): readonly NeededDepths[] {
  const { plantCoefficient, rawMm, plantRelativeSd, storageRelativeSd } = zone;
  const ofMonths = new Float64Array(room.irrigation.length);
  const sums = (weather: NeedSeries, coefficient: number, raw: number, days: Float64Array | null = null) => {
    const { depletion, irrigation } = room;
    const written = { depletion, irrigation, sums: new Float64Array(months.starts.length), ofMonths: days };
    needByMonth(weather, months, coefficient, raw, written);
    return written.sums;
  };
  const half = (more: Float64Array, less: Float64Array, month: number) => ((more[month] as number) - (less[month] as number)) / 2;
  const { asItCame, moreEto, lessEto, moreRain, lessRain } = weathers;
  const net = sums(asItCame, plantCoefficient, rawMm, ofMonths);
  const morePlant = sums(asItCame, plantCoefficient * (1 + plantRelativeSd), rawMm);
  const lessPlant = sums(asItCame, plantCoefficient * (1 - plantRelativeSd), rawMm);
  const moreStorage = sums(asItCame, plantCoefficient, rawMm * (1 + storageRelativeSd));
  const lessStorage = sums(asItCame, plantCoefficient, rawMm * (1 - storageRelativeSd));
  const [etoUp, etoDown] = [sums(moreEto, plantCoefficient, rawMm), sums(lessEto, plantCoefficient, rawMm)];
  const [rainUp, rainDown] = [sums(moreRain, plantCoefficient, rawMm), sums(lessRain, plantCoefficient, rawMm)];
  return Array.from(net, (netMm, month) => ({
    netMm,
    ofDays: ofMonths.subarray(months.starts[month], months.ends[month]),
    moved: {
      plantFactor: half(morePlant, lessPlant, month),
      rootStorage: half(moreStorage, lessStorage, month),
      eto: half(etoUp, etoDown, month),
      rain: half(rainUp, rainDown, month),
    },
  }));
}

function weathersOf(weather: WeatherSeries, from: number, length: number, rainRelativeSd: number): Weathers {
  const blank = () => ({ eto: new Float64Array(length), rain: new Float64Array(length) });
  const [asItCame, moreEto, lessEto] = [blank(), blank(), blank()];
  const [moreRain, lessRain] = [new Float64Array(length), new Float64Array(length)];
  for (let day = 0; day < length; day += 1) {
    const at = from + day - weather.firstDay;
    const eto = weather.etoMm[at] ?? Number.NaN;
    const rain = weather.rainMm[at] ?? Number.NaN;
    const rainSd = weather.rainSdMm?.[at] ?? 0;
    // A day that is not known may have had rain that its plants stored; where it is, what else they needed is filled in.
    if (Number.isNaN(eto + rain)) {
      moreRain[day] = 2 * rainSd;
      continue;
    }
    const sd = weather.etoRelativeSd[at] ?? 0;
    asItCame.eto[day] = eto;
    asItCame.rain[day] = rain;
    moreEto.eto[day] = eto * (1 + sd);
    lessEto.eto[day] = Math.max(0, eto * (1 - sd));
    if (rainSd === 0) {
      moreRain[day] = rain * (1 + rainRelativeSd);
      lessRain[day] = rain * (1 - rainRelativeSd);
    } else {
      // What cannot be taken off is added: half the difference is the deviation all the same.
      const off = Math.hypot(rain * rainRelativeSd, rainSd);
      lessRain[day] = Math.max(0, rain - off);
      moreRain[day] = (lessRain[day] as number) + 2 * off;
    }
  }
  return {
    asItCame,
    moreEto: { ...moreEto, rain: asItCame.rain },
    lessEto: { ...lessEto, rain: asItCame.rain },
    moreRain: { eto: asItCame.eto, rain: moreRain },
    lessRain: { eto: asItCame.eto, rain: lessRain },
  };
}

function checked(zone: NeedingZone | undefined): NeedingZone {
  const { plantCoefficient, rawMm } = zone ?? { plantCoefficient: Number.NaN, rawMm: Number.NaN };
  if (!zone || !(plantCoefficient >= 0 && rawMm >= 0 && Number.isFinite(plantCoefficient + rawMm)))
    throw new DomainError('ROOT_ZONE_OUT_OF_DOMAIN', { plantCoefficient, readilyAvailableWater: rawMm });
  return zone;
}
