import type { Quantity } from '@rillbook/units/quantity.js';
import { metresPerSecond } from '@rillbook/units/speed.js';
import { atmosphericPressure } from '../air/atmospheric-pressure.js';
import { psychrometricConstant } from '../air/psychrometric-constant.js';
import { hourlyNetLongwaveRadiation } from '../radiation/net-longwave-radiation.js';
import { netRadiation, netShortwaveRadiation } from '../radiation/net-radiation.js';
import { saturationVapourPressure } from '../vapour/saturation-vapour-pressure.js';
import { standardizedSlopeOfSaturationVapourPressure } from '../vapour/slope-of-saturation-vapour-pressure.js';
import type { HourlyTerms } from './hourly-penman-monteith.js';

/** An hour of which all is known. */
export type CompleteHour = {
  /** Mean air temperature, T. [°C] */
  readonly airTemperature: Quantity<'°C'>;
  /** Actual vapour pressure, ea. [kPa] */
  readonly vapourPressure: Quantity<'kPa'>;
  /** Wind speed at 2 m, u2. [m/s] */
  readonly windSpeedAt2M: Quantity<'m/s'>;
  /** Solar radiation, Rs. [MJ/m2/h] */
  readonly solarRadiation: Quantity<'MJ/m2/h'>;
};

/**
 * Terms of an hour as the standardized equation computes them (ASCE-EWRI, Eq. 34 to 67).
 *
 * es is that of the hour's mean temperature; wind is used as measured.
 *
 * @param hour - The hour, complete. [any]
 * @param elevation - Height above sea level. [m]
 * @param cloudiness - Cloudiness factor, fcd: the hour's own under a high sun, else the one carried. [–]
 * @returns The terms of the combination equation, for the short and the tall reference alike. [any]
 * @throws {DomainError} `VAPOUR_PRESSURE_OUT_OF_DOMAIN`, `PRESSURE_OUT_OF_DOMAIN`, `SPEED_OUT_OF_DOMAIN`.
 * @source ASCE-EWRI (2005), The ASCE Standardized Reference Evapotranspiration Equation.
 */
export function hourlyTerms(hour: CompleteHour, elevation: Quantity<'m'>, cloudiness: number): HourlyTerms {
  const longwave = hourlyNetLongwaveRadiation(hour.airTemperature, hour.vapourPressure, cloudiness);
  return {
    meanTemperature: hour.airTemperature,
    netRadiation: netRadiation(netShortwaveRadiation(hour.solarRadiation), longwave),
    windSpeedAt2M: metresPerSecond(hour.windSpeedAt2M),
    saturationVapourPressure: saturationVapourPressure(hour.airTemperature),
    vapourPressure: hour.vapourPressure,
    vapourPressureSlope: standardizedSlopeOfSaturationVapourPressure(hour.airTemperature),
    psychrometricConstant: psychrometricConstant(atmosphericPressure(elevation)),
  };
}
