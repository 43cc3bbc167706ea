import { fillMissingDays } from './fill-missing-days.js';
import type { WeatherSeries } from './weather-series.js';

/**
 * Which covered days have weather (1) and which do not (0); `isTooMuch` where what is missing makes a volume absent. `filledDays` are those
 * among the known whose ETo the station itself did not measure; `daysWithoutRain` are not known for want of rain alone. `missingWeight` is the
 * ET weight of the days not known, over that of the known.
 */
export interface MissingWeather {
  readonly known: Uint8Array;
  readonly missingDays: number;
  readonly daysWithoutRain: number;
  readonly missingWeight: number;
  readonly isTooMuch: boolean;
  readonly filledDays: readonly number[];
}

/**
 * The days of a span without reference evapotranspiration or rain.
 *
 * @param weather - The weather. [mm], one per day
 * @param firstDay - Day number of the first covered day. [d]
 * @param etWeights - ET weight of each covered day. [mm], one per day
 * @returns Which days are known, and whether too much is missing to fill it in. [–]
 */
export function missingWeather(weather: WeatherSeries, firstDay: number, etWeights: Float64Array): MissingWeather {
  const known = new Uint8Array(etWeights.length);
  const filledDays: number[] = [];
  let missingDays = 0;
  let daysWithoutRain = 0;
  for (let day = 0; day < known.length; day += 1) {
    const at = firstDay + day - weather.firstDay;
    const { hasEto, hasRain } = knownOfDay(weather, at);
    known[day] = hasEto && hasRain ? 1 : 0;
    if (known[day]) {
      if (weather.filledDays?.has(at)) filledDays.push(day);
      continue;
    }
    missingDays += 1;
    daysWithoutRain += hasEto ? 1 : 0;
  }
  const tooMuch = missingDays > 0 && isTooMuch(known, etWeights);
  return { known, missingDays, daysWithoutRain, missingWeight: missingWeight(known, etWeights), isTooMuch: tooMuch, filledDays };
}

// Where the known days have no weight, days count alike.
function missingWeight(known: Uint8Array, etWeights: Float64Array): number {
  const ratio = (weightOf: (day: number) => number) => {
    let [missing, present] = [0, 0];
    for (let day = 0; day < known.length; day += 1) {
      if (known[day]) present += weightOf(day);
      else missing += weightOf(day);
    }
    return present > 0 ? missing / present : null;
  };
  return ratio((day) => etWeights[day] ?? 0) ?? ratio(() => 1) ?? 0;
}

function knownOfDay({ etoMm, rainMm }: WeatherSeries, at: number): { readonly hasEto: boolean; readonly hasRain: boolean } {
  return { hasEto: (etoMm[at] ?? Number.NaN) >= 0, hasRain: (rainMm[at] ?? Number.NaN) >= 0 };
}

/**
 * A depth over the days with weather, with the other days filled in: in proportion to their reference evapotranspiration, which is known of a day
 * without rain; a day without either counts as the mean of the others.
 *
 * @param depth - Depth of the days that are known. [mm]
 * @param missing - The days without weather. [d]
 * @returns The depth of all days; null where too much is missing. [mm]
 */
export function fillMissingWeather(depth: number, missing: MissingWeather): number | null {
  const { missingDays, missingWeight, isTooMuch } = missing;
  if (isTooMuch) return null;
  return missingDays === 0 ? depth : depth * (1 + missingWeight);
}

function isTooMuch(known: Uint8Array, etWeights: Float64Array): boolean {
  const days = Array.from(known, (each, day) => ({ litres: 0, knownShare: each, etWeight: etWeights[day] ?? 1, neededLitres: null }));
  return fillMissingDays(days).litres === null;
}
