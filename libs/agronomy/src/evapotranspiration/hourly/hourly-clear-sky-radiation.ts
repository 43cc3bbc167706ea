import type { Quantity } from '@rillbook/units/quantity.js';
import { atmosphericPressure } from '../air/atmospheric-pressure.js';
import { clearSkyRadiationOfHumidAir } from '../radiation/clear-sky-radiation-of-humid-air.js';
import type { SunOfHour } from './sun-of-hour.js';

/** Below this the air mass formula has no meaning; an assumption, common practice of programs: there is hardly any light then. [–] */
const LOWEST_SINE = 0.01;

/**
 * Clear-sky radiation of an hour by the full method, Rso (ASCE-EWRI, Appendix D, at the sun angle of the middle of the hour).
 *
 * Rso = (KB + KD)·Ra
 *
 * @param sunPosition - Where the sun stands. [any]
 * @param vapourPressure - Actual vapour pressure. [kPa]
 * @param elevation - Height above sea level. [m]
 * @returns Solar radiation of the hour without clouds; 0 by night. [MJ/m2/h]
 * @throws {DomainError} `PRESSURE_OUT_OF_DOMAIN`.
 * @source ASCE-EWRI (2005), The ASCE Standardized Reference Evapotranspiration Equation, Appendix D.
 * @example 3.351 for Fallon, Nevada, 1 July 2015, 10 to 11 h Pacific Standard Time
 */
export function hourlyClearSkyRadiation(
  sunPosition: SunOfHour,
  vapourPressure: Quantity<'kPa'>,
  elevation: Quantity<'m'>,
): Quantity<'MJ/m2/h'> {
  return clearSkyRadiationOfHumidAir(sunPosition.extraterrestrialRadiation, {
    pressure: atmosphericPressure(elevation),
    vapourPressure,
    sineOfSunAngle: Math.max(LOWEST_SINE, sunPosition.sineOfSunAngle),
  });
}
