import { DomainError } from '@rillbook/units/domain-error.js';
import { finiteQuantity, type Quantity } from '@rillbook/units/quantity.js';
import type { RadiationUnit } from './radiation-unit.js';

/** What the light passes: how much air, how moist, how steep. */
export type AirPassed = {
  /** Atmospheric pressure, P. [kPa] */
  readonly pressure: Quantity<'kPa'>;
  /** Actual vapour pressure, ea. [kPa] */
  readonly vapourPressure: Quantity<'kPa'>;
  /** Sine of the sun's angle above the horizon, sin β: of a day its mean, of an hour that of its middle. [–] */
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
 * Clearness index of the direct beam, KB (ASCE-EWRI, Eq. D.2).
 *
 * KB = 0.98·exp(-0.00146·P/(Kt·sin β) - 0.075·(W/sin β)^0.4)
 *
 * @param air - What the light passes. [any]
 * @returns Share of the light that comes straight through. [–]
 * @throws {DomainError} `AIR_OUT_OF_DOMAIN` when the sun is not above the horizon, or a pressure is below 0.
 * @source ASCE-EWRI (2005), The ASCE Standardized Reference Evapotranspiration Equation, Appendix D.
 */
export function directBeamClearness(air: AirPassed): number {
  const { pressure, vapourPressure, sineOfSunAngle } = air;
  // Below the horizon the formula gives no number, and none is made up.
  if (!(sineOfSunAngle > 0 && sineOfSunAngle <= 1 && pressure >= 0 && vapourPressure >= 0))
    throw new DomainError('AIR_OUT_OF_DOMAIN', { pressure, vapourPressure, sineOfSunAngle });
  const water = precipitableWater(vapourPressure, pressure);
  const airTerm = (0.00146 * pressure) / (TURBIDITY * sineOfSunAngle);
  return 0.98 * Math.exp(-airTerm - 0.075 * (water / sineOfSunAngle) ** 0.4);
}

/**
 * Clearness index of the diffuse light, KD (ASCE-EWRI, Eq. D.4).
 *
 * KD = 0.35 - 0.36·KB where KB ≥ 0.15, else 0.18 + 0.82·KB
 *
 * @param directBeamClearness - Clearness index of the direct beam, KB. [–]
 * @returns Share of the light that comes scattered. [–]
 * @throws {DomainError} `CLEARNESS_OUT_OF_DOMAIN` when not within 0 … 1.
 * @source ASCE-EWRI (2005), The ASCE Standardized Reference Evapotranspiration Equation, Appendix D.
 */
export function diffuseClearness(directBeamClearness: number): number {
  if (!(directBeamClearness >= 0 && directBeamClearness <= 1)) throw new DomainError('CLEARNESS_OUT_OF_DOMAIN', { directBeamClearness });
  return directBeamClearness >= 0.15 ? 0.35 - 0.36 * directBeamClearness : 0.18 + 0.82 * directBeamClearness;
}

/**
 * Clear-sky radiation from the air's moisture and the sun's height, Rso (ASCE-EWRI, Eq. D.1).
 *
 * Rso = (KB + KD)·Ra
 *
 * @param extraterrestrialRadiation - Radiation above the atmosphere. [MJ/m2/d or MJ/m2/h]
 * @param air - What the light passes. [any]
 * @returns Solar radiation of a day or an hour without clouds. [MJ/m2/d or MJ/m2/h]
 * @throws {DomainError} `AIR_OUT_OF_DOMAIN` as `directBeamClearness`; `RADIATION_OUT_OF_DOMAIN` when not finite.
 * @source ASCE-EWRI (2005), The ASCE Standardized Reference Evapotranspiration Equation, Appendix D.
 */
export function clearSkyRadiationOfHumidAir<Unit extends RadiationUnit>(
  extraterrestrialRadiation: Quantity<Unit>,
  air: AirPassed,
): Quantity<Unit> {
  const direct = directBeamClearness(air);
  return finiteQuantity((direct + diffuseClearness(direct)) * extraterrestrialRadiation, 'RADIATION_OUT_OF_DOMAIN');
}
