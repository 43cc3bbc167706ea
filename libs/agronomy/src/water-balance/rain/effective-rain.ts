import { DomainError } from '@rillbook/units/domain-error.js';
import { millimetres } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/** Share of reference evapotranspiration up to which a day's rain only wets leaves and surface (FAO-56, chapter 8). */
export const TRACE_RAIN_SHARE = 0.2;

/**
 * Rain of a day that reaches the root zone: all of it, or nothing where it is a trace (FAO-56, chapter 8).
 *
 * counted = P where P > 0.2·ETo, else 0
 *
 * @param rain - Rain of the day. [mm]
 * @param eto - Reference evapotranspiration of the day. [mm]
 * @returns Rain that counts, before asking whether the root zone has room. [mm]
 * @throws {DomainError} `RAIN_OUT_OF_DOMAIN` when the rain is below 0, or a value is not finite.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, chapter 8: rain below 0.2 ETo may be ignored.
 * @example countedRain(millimetres(0.9), millimetres(5)) // 0; countedRain(millimetres(1.5), millimetres(5)) // 1.5
 */
export function countedRain(rain: Quantity<'mm'>, eto: Quantity<'mm'>): Quantity<'mm'> {
  if (!(rain >= 0 && Number.isFinite(rain + eto))) throw new DomainError('RAIN_OUT_OF_DOMAIN', { rain, eto });
  return rain > TRACE_RAIN_SHARE * eto ? rain : millimetres(0);
}

/**
 * Effective rain of a day, Pe: the rain that counts, as far as the root zone has room.
 *
 * Pe = min(counted, D + ETc)
 *
 * @param rain - Rain of the day. [mm]
 * @param eto - Reference evapotranspiration of the day. [mm]
 * @param room - Depletion at the start of the day and the day's evapotranspiration of the plants. [mm]
 * @returns Rain that stays in the root zone. [mm]
 * @throws {DomainError} `RAIN_OUT_OF_DOMAIN` when the rain is below 0, or a value is not finite; `LENGTH_OUT_OF_DOMAIN` when the room is not.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, chapter 8.
 */
export function effectiveRain(rain: Quantity<'mm'>, eto: Quantity<'mm'>, room: Quantity<'mm'>): Quantity<'mm'> {
  return millimetres(Math.min(countedRain(rain, eto), Math.max(0, room)));
}
