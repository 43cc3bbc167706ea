import type { Quantity } from '@rillbook/units/quantity.js';
import { megajoulesPerSquareMetreDay } from '@rillbook/units/radiation.js';
import { atmosphericPressure } from '../air/atmospheric-pressure.js';
import { meanTemperature } from '../air/mean-temperature.js';
import { psychrometricConstant } from '../air/psychrometric-constant.js';
import { clearSkyRadiationOfHumidAir } from '../radiation/clear-sky-radiation-of-humid-air.js';
import { cloudinessFactor } from '../radiation/cloudiness-factor.js';
import { standardizedNetLongwaveRadiation } from '../radiation/net-longwave-radiation.js';
import { netRadiation, netShortwaveRadiation } from '../radiation/net-radiation.js';
import { extraterrestrialRadiation } from '../sun/extraterrestrial-radiation.js';
import { sineOfMeanSunAngle } from '../sun/sine-of-mean-sun-angle.js';
import { meanSaturationVapourPressure } from '../vapour/mean-saturation-vapour-pressure.js';
import { standardizedSlopeOfSaturationVapourPressure } from '../vapour/slope-of-saturation-vapour-pressure.js';
import type { CompleteDay, Site } from './complete-day.js';
import type { PenmanMonteithTerms } from './combination-equation.js';

/**
 * Clear-sky radiation of a day and site by the full method (ASCE-EWRI, Appendix D).
 *
 * The standard allows Eq. 19 (elevation alone) as well; the full method is used since it is what the published station results were made
 * with, and on a real year it stays within 0.011 mm/d of them where Eq. 19 strays to 0.14.
 *
 * @param day - Day of the year and vapour pressure are used. [any]
 * @param site - Where it was measured. [any]
 * @returns Solar radiation of a day without clouds. [MJ/m2/d]
 * @throws {DomainError} `LATITUDE_OUT_OF_DOMAIN`, `DAY_OF_YEAR_OUT_OF_DOMAIN`.
 * @source ASCE-EWRI (2005), The ASCE Standardized Reference Evapotranspiration Equation, Appendix D.
 */
export function standardizedClearSkyRadiation(day: Pick<CompleteDay, 'dayOfYear' | 'vapourPressure'>, site: Site): Quantity<'MJ/m2/d'> {
  return clearSkyRadiationOfHumidAir(extraterrestrialRadiation(site.latitude, day.dayOfYear), {
    pressure: atmosphericPressure(site.elevation),
    vapourPressure: day.vapourPressure,
    sineOfSunAngle: sineOfMeanSunAngle(site.latitude, day.dayOfYear),
  });
}

/**
 * Terms of a day as the standardized equation computes them (ASCE-EWRI, Eq. 2 to 33).
 *
 * Clear-sky radiation is that of Appendix D; wind is used as measured; G = 0.
 *
 * @param day - The day, complete. [any]
 * @param site - Where it was measured. [any]
 * @returns The terms of the combination equation, for the short and the tall reference alike. [any]
 * @throws {DomainError} Codes of the parts: `LATITUDE_OUT_OF_DOMAIN`, `DAY_OF_YEAR_OUT_OF_DOMAIN`, `VAPOUR_PRESSURE_OUT_OF_DOMAIN`.
 * @source ASCE-EWRI (2005), The ASCE Standardized Reference Evapotranspiration Equation.
 */
export function standardizedTerms(day: CompleteDay, site: Site): PenmanMonteithTerms {
  const cloudiness = cloudinessFactor(day.solarRadiation, standardizedClearSkyRadiation(day, site));
  const longwave = standardizedNetLongwaveRadiation(day, day.vapourPressure, cloudiness);
  const mean = meanTemperature(day.maximumTemperature, day.minimumTemperature);
  return {
    meanTemperature: mean,
    netRadiation: netRadiation(netShortwaveRadiation(day.solarRadiation), longwave),
    soilHeatFlux: megajoulesPerSquareMetreDay(0),
    windSpeedAt2M: day.windSpeedAt2M,
    saturationVapourPressure: meanSaturationVapourPressure(day.maximumTemperature, day.minimumTemperature),
    vapourPressure: day.vapourPressure,
    vapourPressureSlope: standardizedSlopeOfSaturationVapourPressure(mean),
    psychrometricConstant: psychrometricConstant(atmosphericPressure(site.elevation)),
  };
}
