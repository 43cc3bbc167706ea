import type { Quantity } from '@rillbook/units/quantity.js';
import { hourlySoilHeatFlux, type ReferenceSurface } from '../radiation/hourly-soil-heat-flux.js';
import { combinationEquation, type PenmanMonteithTerms, type SurfaceConstants } from './combination-equation.js';

/** The terms of an hour without its soil heat flux, which follows from net radiation and surface. */
export type HourlyTerms = Omit<PenmanMonteithTerms<'MJ/m2/h'>, 'soilHeatFlux'>;

/** Constants by surface, by day and by night (ASCE-EWRI 2005, Table 1). */
const CONSTANTS: Readonly<Record<ReferenceSurface, { readonly day: SurfaceConstants; readonly night: SurfaceConstants }>> = {
  short: { day: { numerator: 37, denominator: 0.24 }, night: { numerator: 37, denominator: 0.96 } },
  tall: { day: { numerator: 66, denominator: 0.25 }, night: { numerator: 66, denominator: 1.7 } },
};

/** Constants of short grass by the hour, day and night alike, before the standardized equation told them apart (FAO-56, Eq. 53). */
const FAO56: SurfaceConstants = { numerator: 37, denominator: 0.34 };

/**
 * Reference evapotranspiration of short grass in an hour as FAO-56 has it, ETo (FAO-56, Eq. 53).
 *
 * ETo = (0.408·Δ·(Rn - G) + γ·37/(T + 273)·u2·(es - ea)) / (Δ + γ·(1 + 0.34·u2)); G = 0.1·Rn by day, 0.5·Rn by night
 *
 * @param terms - The terms of the equation. [any]
 * @returns Water that the reference grass uses in the hour; below 0 when dew forms. [mm]
 * @throws {DomainError} `LENGTH_OUT_OF_DOMAIN` when the terms give no finite number.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 53, 45 and 46.
 * @example 0.63 for N'Diaye, 14 to 15 h, FAO-56 Example 19
 */
export function fao56HourlyReferenceEvapotranspiration(terms: HourlyTerms): Quantity<'mm'> {
  return combinationEquation({ ...terms, soilHeatFlux: hourlySoilHeatFlux(terms.netRadiation, 'short') }, FAO56);
}

/**
 * Reference evapotranspiration of short grass in an hour, ETo, also ETos (ASCE-EWRI, Eq. 1 with Table 1).
 *
 * Cn = 37; Cd = 0.24 by day and 0.96 by night; G = 0.1·Rn by day and 0.5·Rn by night. It is day where Rn ≥ 0.
 *
 * @param terms - The terms of the equation. [any]
 * @returns Water that the reference grass uses in the hour; below 0 when dew forms. [mm]
 * @throws {DomainError} `LENGTH_OUT_OF_DOMAIN` when the terms give no finite number.
 * @source ASCE-EWRI (2005), The ASCE Standardized Reference Evapotranspiration Equation, Eq. 1 with Table 1.
 * @example 0.606 for Fallon, Nevada, 1 July 2015, 10 to 11 h Pacific Standard Time
 */
export function shortHourlyReferenceEvapotranspiration(terms: HourlyTerms): Quantity<'mm'> {
  return ofSurface(terms, 'short');
}

/**
 * Reference evapotranspiration of tall alfalfa in an hour, ETr, also ETrs (ASCE-EWRI, Eq. 1 with Table 1).
 *
 * Cn = 66; Cd = 0.25 by day and 1.7 by night; G = 0.04·Rn by day and 0.2·Rn by night. It is day where Rn ≥ 0.
 *
 * @param terms - The terms of the equation. [any]
 * @returns Water that the reference alfalfa uses in the hour; below 0 when dew forms. [mm]
 * @throws {DomainError} `LENGTH_OUT_OF_DOMAIN` when the terms give no finite number.
 * @source ASCE-EWRI (2005), The ASCE Standardized Reference Evapotranspiration Equation, Eq. 1 with Table 1.
 */
export function tallHourlyReferenceEvapotranspiration(terms: HourlyTerms): Quantity<'mm'> {
  return ofSurface(terms, 'tall');
}

function ofSurface(terms: HourlyTerms, surface: ReferenceSurface): Quantity<'mm'> {
  const constants = CONSTANTS[surface];
  const soilHeatFlux = hourlySoilHeatFlux(terms.netRadiation, surface);
  return combinationEquation({ ...terms, soilHeatFlux }, terms.netRadiation >= 0 ? constants.day : constants.night);
}
