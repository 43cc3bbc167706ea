import { DomainError } from '@rillbook/units/domain-error.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { TRACE_RAIN_SHARE } from '../rain/effective-rain.js';

/** The root zone whose water is used up, and how far it is. */
export type RootZoneNow = {
  /** Evapotranspiration of the plants over reference evapotranspiration, KL. [–] */
  readonly plantCoefficient: number;
  /** Readily available water, RAW. [mm] */
  readonly readilyAvailableWater: Quantity<'mm'>;
  /** Depletion before the first day, D. [mm] */
  readonly depletion: Quantity<'mm'>;
};

/** Days that are to come: reference evapotranspiration, and rain where any is told; the same length and order. */
export type DaysAhead = { readonly eto: ArrayLike<number>; readonly rain: ArrayLike<number> };

/** Floating-point dust of depths. */
const DUST = 1e-9;

/**
 * Whole days that a root zone does without irrigation: those before the first at whose end its depletion exceeds the readily available water.
 *
 * D = max(0, D + KL·ETo - P), P counted where it exceeds 0.2 ETo; the first day with D > RAW needs irrigation.
 *
 * @param rootZone - Coefficient, storage and depletion now. [mm]
 * @param ahead - The days to come. [mm/d], one per day
 * @returns Days before the one that needs irrigation; all of them where none does. [d]
 * @throws {DomainError} `WEATHER_SERIES_OUT_OF_DOMAIN` when lengths differ or a day is not a number or negative; `ROOT_ZONE_OUT_OF_DOMAIN` when
 * coefficient, storage or depletion is negative or not finite.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 85 and chapter 8: irrigate before or when RAW is depleted.
 * @example A full root zone of 25 mm under plants that use 5 mm a day: 5 days; the sixth needs irrigation.
 */
export function daysUntilNeed(rootZone: RootZoneNow, ahead: DaysAhead): number {
  const { plantCoefficient, readilyAvailableWater, depletion } = rootZone;
  if (![plantCoefficient, readilyAvailableWater, depletion].every((value) => value >= 0 && value < Infinity))
    throw new DomainError('ROOT_ZONE_OUT_OF_DOMAIN', { plantCoefficient, readilyAvailableWater, depletion });
  if (ahead.eto.length !== ahead.rain.length)
    throw new DomainError('WEATHER_SERIES_OUT_OF_DOMAIN', { etoDays: ahead.eto.length, rainDays: ahead.rain.length });
  let left: number = depletion;
  for (let day = 0; day < ahead.eto.length; day += 1) {
    const [eto, rain] = [ahead.eto[day] as number, ahead.rain[day] as number];
    if (!(eto >= 0 && rain >= 0 && eto + rain < Infinity)) throw new DomainError('WEATHER_SERIES_OUT_OF_DOMAIN', { day, eto, rain });
    left = Math.max(0, left + plantCoefficient * eto - (rain > TRACE_RAIN_SHARE * eto ? rain : 0));
    if (left > readilyAvailableWater + DUST) return day;
  }
  return ahead.eto.length;
}
