import { finiteQuantity, type Quantity } from '@rillbook/units/quantity.js';
import { megajoulesPerSquareMetreDay } from '@rillbook/units/radiation.js';

/** What the light passes: how much air, how moist, how steep. */
export type AirPassed = {
  /** Atmospheric pressure, P. [kPa] */
  readonly pressure: Quantity<'kPa'>;
  /** Actual vapour pressure, ea. [kPa] */
  readonly vapourPressure: Quantity<'kPa'>;
  /** Sine of the mean angle of the sun, sin β. [–] */
  readonly sineOfSunAngle: number;
};

/** Turbidity of clean air, Kt (ASCE-EWRI 2005, Appendix D; 0.5 would be extremely dusty air). */
const TURBIDITY = 1;

/**
 * Water in the atmosphere that could fall, W (ASCE-EWRI, Eq. D.3).
 *
 * W = 0.14·ea·P + 2.1
 *
 * @param vapourPressure - Actual vapour pressure near the ground. [kPa]
 * @param pressure - Atmospheric pressure. [kPa]
 * @returns Precipitable water. [mm]
 * @source ASCE-EWRI (2005), The ASCE Standardized Reference Evapotranspiration Equation, Appendix D.
 */
export function precipitableWater(vapourPressure: Quantity<'kPa'>, pressure: Quantity<'kPa'>): Quantity<'mm'> {
  return finiteQuantity(0.14 * vapourPressure * pressure + 2.1, 'PRESSURE_OUT_OF_DOMAIN');
}

/**
 * Clear-sky radiation from the air's moisture and the sun's height, Rso (ASCE-EWRI, Eq. D.1 to D.4).
 *
 * Rso = (KB + KD)·Ra;
 * KB = 0.98·exp(-0.00146·P/(Kt·sin β) - 0.075·(W/sin β)^0.4);
 * KD = 0.35 - 0.36·KB where KB ≥ 0.15, else 0.18 + 0.82·KB
 *
 * @param extraterrestrialRadiation - Radiation above the atmosphere. [MJ/m2/d]
 * @param air - What the light passes. [any]
 * @returns Solar radiation of a day without clouds. [MJ/m2/d]
 * @source ASCE-EWRI (2005), The ASCE Standardized Reference Evapotranspiration Equation, Appendix D.
 */
export function clearSkyRadiationOfHumidAir(extraterrestrialRadiation: Quantity<'MJ/m2/d'>, air: AirPassed): Quantity<'MJ/m2/d'> {
  const water = precipitableWater(air.vapourPressure, air.pressure);
  const airTerm = (0.00146 * air.pressure) / (TURBIDITY * air.sineOfSunAngle);
  const direct = 0.98 * Math.exp(-airTerm - 0.075 * (water / air.sineOfSunAngle) ** 0.4);
  const diffuse = direct >= 0.15 ? 0.35 - 0.36 * direct : 0.18 + 0.82 * direct;
  return megajoulesPerSquareMetreDay((direct + diffuse) * extraterrestrialRadiation);
}
