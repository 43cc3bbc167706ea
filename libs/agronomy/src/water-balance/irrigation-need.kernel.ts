import { TRACE_RAIN_SHARE } from './rain/effective-rain.js';

/** What the kernel needs to know of a zone, as plain numbers. */
export type NeedZone = {
  /** Evapotranspiration of the plants over reference evapotranspiration: plant, density and shade factor together. [–] */
  readonly plantCoefficient: number;
  /** Readily available water, RAW. [mm] */
  readonly readilyAvailableWater: number;
  /** Depletion at the start of the first day. [mm] */
  readonly initialDepletion: number;
};

/** Where the kernel writes, one number per day, as long as the series. */
export type NeedDays = {
  /** Hypothetical irrigation, I. [mm] */
  readonly irrigation: Float64Array;
  /** Effective rain, Pe. [mm] */
  readonly effectiveRain: Float64Array;
};

/**
 * Inner loop of the irrigation need: depletion grows by ETc less effective rain, irrigation fills what exceeds RAW.
 *
 * D = max(0, D + ETc - counted rain); I = max(0, D - RAW); D = D - I. A value that is not a number spoils all days after it, and so shows in
 * the result.
 *
 * @param eto - Reference evapotranspiration. [mm/d], one per day
 * @param rain - Rain. [mm/d], one per day, same order
 * @param zone - Coefficient, storage and start. [mm]
 * @param days - Written to: irrigation and effective rain. [mm/d], one per day, same order
 * @returns Depletion after the last day; NaN when a day was not a number. [mm]
 * @source The definition of the need in docs/nomenclature.md; rain below 0.2 ETo ignored by FAO-56, chapter 8.
 */
export function runIrrigationNeed(eto: ArrayLike<number>, rain: ArrayLike<number>, zone: NeedZone, days: NeedDays): number {
  const { plantCoefficient, readilyAvailableWater } = zone;
  const { irrigation, effectiveRain } = days;
  let depletion = zone.initialDepletion;
  for (let day = 0; day < eto.length; day += 1) {
    const reference = eto[day] as number;
    const fallen = rain[day] as number;
    // Written as "not above" so that rain that is not a number stays visible instead of counting as dry.
    const counted = fallen <= TRACE_RAIN_SHARE * reference ? 0 : fallen;
    const room = depletion + plantCoefficient * reference;
    const taken = counted > room ? room : counted;
    const left = room - taken;
    const excess = left > readilyAvailableWater ? left - readilyAvailableWater : 0;
    effectiveRain[day] = taken;
    irrigation[day] = excess;
    depletion = excess > 0 ? readilyAvailableWater : left;
  }
  return depletion;
}
