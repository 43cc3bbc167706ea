import { millimetres } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/** All that the combination equation is made of, for one day. */
export type PenmanMonteithTerms = {
  /** Mean air temperature, T. [°C] */
  readonly meanTemperature: Quantity<'°C'>;
  /** Net radiation, Rn. [MJ/m2/d] */
  readonly netRadiation: Quantity<'MJ/m2/d'>;
  /** Soil heat flux, G; 0 for a day. [MJ/m2/d] */
  readonly soilHeatFlux: Quantity<'MJ/m2/d'>;
  /** Wind speed at 2 m, u2. [m/s] */
  readonly windSpeedAt2M: Quantity<'m/s'>;
  /** Mean saturation vapour pressure, es. [kPa] */
  readonly saturationVapourPressure: Quantity<'kPa'>;
  /** Actual vapour pressure, ea. [kPa] */
  readonly vapourPressure: Quantity<'kPa'>;
  /** Slope of the saturation vapour pressure curve, Δ. [kPa/°C] */
  readonly vapourPressureSlope: Quantity<'kPa/°C'>;
  /** Psychrometric constant, γ. [kPa/°C] */
  readonly psychrometricConstant: Quantity<'kPa/°C'>;
};

/** Numerator and denominator constants of a reference surface, Cn and Cd (ASCE-EWRI 2005, Table 1). */
type ReferenceSurface = { readonly numerator: number; readonly denominator: number };

/** Clipped grass of 0.12 m, by the day: also the constants of FAO-56, Eq. 6. */
const SHORT: ReferenceSurface = { numerator: 900, denominator: 0.34 };

/** Alfalfa of 0.5 m, by the day. */
const TALL: ReferenceSurface = { numerator: 1600, denominator: 0.38 };

/** Depth of water that a radiation evaporates, 1/λ. [mm per MJ/m²] */
export const EVAPORATION_PER_RADIATION = 0.408;

/**
 * Reference evapotranspiration of short grass, ETo, also ETos (FAO-56, Eq. 6; ASCE-EWRI, Eq. 1).
 *
 * ETo = (0.408·Δ·(Rn - G) + γ·900/(T + 273)·u2·(es - ea)) / (Δ + γ·(1 + 0.34·u2))
 *
 * @param terms - The terms of the equation. [any]
 * @returns Water that the reference grass uses in the day; below 0 when dew forms. [mm]
 * @throws {DomainError} `LENGTH_OUT_OF_DOMAIN` when the terms give no finite number.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 6; ASCE-EWRI (2005), Eq. 1 with Table 1.
 * @example 5.72 for the terms of Bangkok in April, FAO-56 Example 17
 */
export function shortReferenceEvapotranspiration(terms: PenmanMonteithTerms): Quantity<'mm'> {
  return combination(terms, SHORT);
}

/**
 * Reference evapotranspiration of tall alfalfa, ETr, also ETrs (ASCE-EWRI, Eq. 1).
 *
 * ETr = (0.408·Δ·(Rn - G) + γ·1600/(T + 273)·u2·(es - ea)) / (Δ + γ·(1 + 0.38·u2))
 *
 * @param terms - The terms of the equation. [any]
 * @returns Water that the reference alfalfa uses in the day; below 0 when dew forms. [mm]
 * @throws {DomainError} `LENGTH_OUT_OF_DOMAIN` when the terms give no finite number.
 * @source ASCE-EWRI (2005), The ASCE Standardized Reference Evapotranspiration Equation, Eq. 1 with Table 1.
 */
export function tallReferenceEvapotranspiration(terms: PenmanMonteithTerms): Quantity<'mm'> {
  return combination(terms, TALL);
}

function combination(terms: PenmanMonteithTerms, surface: ReferenceSurface): Quantity<'mm'> {
  const { vapourPressureSlope: slope, psychrometricConstant: gamma, windSpeedAt2M: wind } = terms;
  const radiation = EVAPORATION_PER_RADIATION * slope * (terms.netRadiation - terms.soilHeatFlux);
  const dryness = terms.saturationVapourPressure - terms.vapourPressure;
  const aerodynamic = ((gamma * surface.numerator) / (terms.meanTemperature + 273)) * wind * dryness;
  return millimetres((radiation + aerodynamic) / (slope + gamma * (1 + surface.denominator * wind)));
}
