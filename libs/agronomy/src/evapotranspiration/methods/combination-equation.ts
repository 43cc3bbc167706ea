import { millimetres } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import type { RadiationUnit } from '../radiation/radiation-unit.js';

/** All that the combination equation is made of, for one day or one hour. */
export type PenmanMonteithTerms<Unit extends RadiationUnit = 'MJ/m2/d'> = {
  /** Mean air temperature, T. [°C] */
  readonly meanTemperature: Quantity<'°C'>;
  /** Net radiation, Rn. [MJ/m2/d or MJ/m2/h] */
  readonly netRadiation: Quantity<Unit>;
  /** Soil heat flux, G; 0 for a day. [MJ/m2/d or MJ/m2/h] */
  readonly soilHeatFlux: Quantity<Unit>;
  /** Wind speed at 2 m, u2. [m/s] */
  readonly windSpeedAt2M: Quantity<'m/s'>;
  /** Saturation vapour pressure, es: of a day the mean of its two. [kPa] */
  readonly saturationVapourPressure: Quantity<'kPa'>;
  /** Actual vapour pressure, ea. [kPa] */
  readonly vapourPressure: Quantity<'kPa'>;
  /** Slope of the saturation vapour pressure curve, Δ. [kPa/°C] */
  readonly vapourPressureSlope: Quantity<'kPa/°C'>;
  /** Psychrometric constant, γ. [kPa/°C] */
  readonly psychrometricConstant: Quantity<'kPa/°C'>;
};

/** Constants of a reference surface and time step, Cn and Cd (ASCE-EWRI 2005, Table 1). */
export type SurfaceConstants = {
  /** Numerator constant, Cn: it grows with the aerodynamic roughness. [K·mm·s³/Mg/d or /h] */
  readonly numerator: number;
  /** Denominator constant, Cd: bulk surface resistance over aerodynamic resistance. [s/m] */
  readonly denominator: number;
};

/** Depth of water that a radiation evaporates, 1/λ. [mm per MJ/m²] */
export const EVAPORATION_PER_RADIATION = 0.408;

/**
 * The combination equation by Penman and Monteith in the standardized form, ETsz (ASCE-EWRI, Eq. 1).
 *
 * ETsz = (0.408·Δ·(Rn - G) + γ·Cn/(T + 273)·u2·(es - ea)) / (Δ + γ·(1 + Cd·u2))
 *
 * @param terms - The terms of the equation. [any]
 * @param constants - Cn and Cd of the surface and time step. [any]
 * @returns Water that the reference surface uses in the day or hour; below 0 when dew forms. [mm]
 * @throws {DomainError} `LENGTH_OUT_OF_DOMAIN` when the terms give no finite number.
 * @source ASCE-EWRI (2005), The ASCE Standardized Reference Evapotranspiration Equation, Eq. 1 with Table 1.
 */
export function combinationEquation<Unit extends RadiationUnit>(
  terms: PenmanMonteithTerms<Unit>,
  constants: SurfaceConstants,
): Quantity<'mm'> {
  const { vapourPressureSlope: slope, psychrometricConstant: gamma, windSpeedAt2M: wind } = terms;
  const radiation = EVAPORATION_PER_RADIATION * slope * (terms.netRadiation - terms.soilHeatFlux);
  const dryness = terms.saturationVapourPressure - terms.vapourPressure;
  const aerodynamic = ((gamma * constants.numerator) / (terms.meanTemperature + 273)) * wind * dryness;
  return millimetres((radiation + aerodynamic) / (slope + gamma * (1 + constants.denominator * wind)));
}
