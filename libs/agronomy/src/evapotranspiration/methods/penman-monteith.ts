import type { Quantity } from '@rillbook/units/quantity.js';
import { combinationEquation, type PenmanMonteithTerms, type SurfaceConstants } from './combination-equation.js';

/** Clipped grass of 0.12 m, by the day: also the constants of FAO-56, Eq. 6. */
const SHORT: SurfaceConstants = { numerator: 900, denominator: 0.34 };

/** Alfalfa of 0.5 m, by the day. */
const TALL: SurfaceConstants = { numerator: 1600, denominator: 0.38 };

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
  return combinationEquation(terms, SHORT);
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
  return combinationEquation(terms, TALL);
}
