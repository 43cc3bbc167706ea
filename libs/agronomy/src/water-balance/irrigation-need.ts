import { DomainError } from '@rillbook/units/domain-error.js';
import { millimetres } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { runIrrigationNeed } from './irrigation-need.kernel.js';

/** Days of weather that run before the days asked for, so that the start no longer matters. */
export const WARM_UP_DAYS = 90;

/** Weather of consecutive days, gaps filled: the same length, the same order. */
export type NeedWeather = {
  /** Reference evapotranspiration, ETo. [mm/d], one per day */
  readonly eto: ArrayLike<number>;
  /** Rain, P. [mm/d], one per day */
  readonly rain: ArrayLike<number>;
};

/** The root zone whose need is asked. */
export type NeedRootZone = {
  /** Evapotranspiration of the plants over reference evapotranspiration, KL. [–] */
  readonly plantCoefficient: number;
  /** Readily available water, RAW. [mm] */
  readonly readilyAvailableWater: Quantity<'mm'>;
};

/** What the plants needed from irrigation. */
export type IrrigationNeed = {
  /** Net irrigation, I. [mm/d], one per day asked for */
  readonly irrigationMm: Float64Array;
  /** Effective rain, Pe. [mm/d], one per day asked for */
  readonly effectiveRainMm: Float64Array;
  /** Depletion after the last day, D. [mm] */
  readonly finalDepletionMm: Quantity<'mm'>;
  /** Days that ran before those asked for; fewer than 90 must be said to whoever reads the result. [–] */
  readonly warmUpDays: number;
};

/**
 * Irrigation that a root zone needed on each day with the weather that came, I.
 *
 * D starts at RAW on the first day; D = max(0, D + KL·ETo - Pe); I = max(0, D - RAW), after which D = RAW.
 * Stored rain counts, and nothing lumps at a month's end.
 *
 * @param weather - Consecutive days, best 90 before those asked for. [mm/d], one per day
 * @param rootZone - Coefficient and storage of the root zone. [mm]
 * @param from - Index of the first day asked for: the number of warm-up days. [–]
 * @returns Net irrigation and effective rain by day, depletion at the end, length of the warm-up. [mm]
 * @throws {DomainError} `WEATHER_SERIES_OUT_OF_DOMAIN` when lengths differ, `from` lies outside, or a day is not a number or negative;
 * `ROOT_ZONE_OUT_OF_DOMAIN` when coefficient or storage is negative or not finite.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 85 to 88, with irrigation whenever RAW is used up.
 */
export function irrigationNeed(weather: NeedWeather, rootZone: NeedRootZone, from: number): IrrigationNeed {
  const { eto, rain } = weather;
  const { plantCoefficient, readilyAvailableWater } = rootZone;
  if (eto.length !== rain.length || !Number.isInteger(from) || from < 0 || from > eto.length) {
    throw new DomainError('WEATHER_SERIES_OUT_OF_DOMAIN', { etoDays: eto.length, rainDays: rain.length, from });
  }
  if (!(plantCoefficient >= 0 && readilyAvailableWater >= 0 && Number.isFinite(plantCoefficient + readilyAvailableWater))) {
    throw new DomainError('ROOT_ZONE_OUT_OF_DOMAIN', { plantCoefficient, readilyAvailableWater });
  }
  refuseNegative(eto, 'eto');
  refuseNegative(rain, 'rain');
  const days = { irrigation: new Float64Array(eto.length), effectiveRain: new Float64Array(eto.length) };
  const depletion = runIrrigationNeed(
    eto,
    rain,
    { plantCoefficient, readilyAvailableWater, initialDepletion: readilyAvailableWater },
    days,
  );
  return {
    irrigationMm: days.irrigation.subarray(from),
    effectiveRainMm: days.effectiveRain.subarray(from),
    finalDepletionMm: millimetres(depletion),
    warmUpDays: from,
  };
}

function refuseNegative(values: ArrayLike<number>, name: string): void {
  for (let day = 0; day < values.length; day += 1) {
    const value = values[day] as number;
    if (!(value >= 0 && value < Infinity)) throw new DomainError('WEATHER_SERIES_OUT_OF_DOMAIN', { name, day, value });
  }
}
