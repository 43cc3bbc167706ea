import { megajoulesPerSquareMetreDay } from '@rillbook/units/radiation.js';
import { metresPerSecond } from '@rillbook/units/speed.js';
import { atmosphericPressure } from '../air/atmospheric-pressure.js';
import { meanTemperature } from '../air/mean-temperature.js';
import { psychrometricConstant } from '../air/psychrometric-constant.js';
import { clearSkyRadiation } from '../radiation/clear-sky-radiation.js';
import { cloudinessFactor } from '../radiation/cloudiness-factor.js';
import { netLongwaveRadiation } from '../radiation/net-longwave-radiation.js';
import { netRadiation, netShortwaveRadiation } from '../radiation/net-radiation.js';
import { extraterrestrialRadiation } from '../sun/extraterrestrial-radiation.js';
import { meanSaturationVapourPressure } from '../vapour/mean-saturation-vapour-pressure.js';
import { slopeOfSaturationVapourPressure } from '../vapour/slope-of-saturation-vapour-pressure.js';
import type { CompleteDay, Site } from './complete-day.js';
import type { PenmanMonteithTerms } from './combination-equation.js';

/** Calmest wind used: the equation ignores that light air still moves over warm grass (FAO-56, chapter 3, missing wind data). [m/s] */
const CALMEST_WIND = 0.5;

/**
 * Terms of a day as FAO-56 computes them (FAO-56, Eq. 7 to 42, as in its Box 11).
 *
 * Clear-sky radiation is that of Eq. 37; wind below 0.5 m/s counts as 0.5 m/s; G = 0.
 *
 * @param day - The day, complete. [any]
 * @param site - Where it was measured. [any]
 * @returns The terms of the combination equation. [any]
 * @throws {DomainError} Codes of the parts: `LATITUDE_OUT_OF_DOMAIN`, `DAY_OF_YEAR_OUT_OF_DOMAIN`, `VAPOUR_PRESSURE_OUT_OF_DOMAIN`.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, chapters 3 and 4.
 * @example shortReferenceEvapotranspiration(fao56Terms(day, site)) // 3.88 for Uccle on 6 July, FAO-56 Example 18
 */
export function fao56Terms(day: CompleteDay, site: Site): PenmanMonteithTerms {
  const clearSky = clearSkyRadiation(site.elevation, extraterrestrialRadiation(site.latitude, day.dayOfYear));
  const longwave = netLongwaveRadiation(day, day.vapourPressure, cloudinessFactor(day.solarRadiation, clearSky));
  const mean = meanTemperature(day.maximumTemperature, day.minimumTemperature);
  return {
    meanTemperature: mean,
    netRadiation: netRadiation(netShortwaveRadiation(day.solarRadiation), longwave),
    soilHeatFlux: megajoulesPerSquareMetreDay(0),
    windSpeedAt2M: metresPerSecond(Math.max(CALMEST_WIND, day.windSpeedAt2M)),
    saturationVapourPressure: meanSaturationVapourPressure(day.maximumTemperature, day.minimumTemperature),
    vapourPressure: day.vapourPressure,
    vapourPressureSlope: slopeOfSaturationVapourPressure(mean),
    psychrometricConstant: psychrometricConstant(atmosphericPressure(site.elevation)),
  };
}
