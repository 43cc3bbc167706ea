import { DomainError } from '@rillbook/units/domain-error.js';
import { millimetres } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/**
 * Landscape coefficient, KL (Costello et al., landscape coefficient method).
 *
 * KL = ks · kd · kmc
 *
 * @param plantFactor - Plant factor, also species factor ks. [–]
 * @param densityFactor - Density factor, kd. [–]
 * @param shadeFactor - Shade factor, the microclimate factor kmc of the zone. [–]
 * @returns Share of reference evapotranspiration that the zone needs. [–]
 * @throws {DomainError} `LANDSCAPE_COEFFICIENT_OUT_OF_DOMAIN` when a factor is below 0 or not finite.
 * @source Costello, Matheny, Clark and Jones (2000), A Guide to Estimating Irrigation Water Needs of Landscape Plantings in California.
 * @example landscapeCoefficient(0.2, 0.5, 1) // 0.1, the guide's own example
 */
export function landscapeCoefficient(plantFactor: number, densityFactor: number, shadeFactor: number): number {
  const factors = { plantFactor, densityFactor, shadeFactor };
  if (!Object.values(factors).every((factor) => factor >= 0 && Number.isFinite(factor))) {
    throw new DomainError('LANDSCAPE_COEFFICIENT_OUT_OF_DOMAIN', factors);
  }
  return plantFactor * densityFactor * shadeFactor;
}

/**
 * Landscape evapotranspiration, ETc, also ETL (Costello et al., landscape coefficient method).
 *
 * ETc = KL · ETo
 *
 * @param landscapeCoefficient - Landscape coefficient of the zone, KL. [–]
 * @param eto - Reference evapotranspiration. [mm]
 * @returns Water that the zone's plants need from soil, rain and irrigation together. [mm]
 * @throws {DomainError} `LENGTH_OUT_OF_DOMAIN` when not finite.
 * @source Costello, Matheny, Clark and Jones (2000), A Guide to Estimating Irrigation Water Needs of Landscape Plantings in California.
 */
export function landscapeEvapotranspiration(landscapeCoefficient: number, eto: Quantity<'mm'>): Quantity<'mm'> {
  return millimetres(landscapeCoefficient * eto);
}

/**
 * Total water applied, TWA (Costello et al., landscape coefficient method).
 *
 * TWA = ETL / IE
 *
 * @param landscapeEvapotranspiration - Water that the plants need from irrigation, ETL. [mm]
 * @param irrigationEfficiency - Share of the applied water that the plants get, IE. [–]
 * @returns Water to be applied. [mm]
 * @throws {DomainError} `IRRIGATION_EFFICIENCY_OUT_OF_DOMAIN` when not above 0 and up to 1.
 * @source Costello, Matheny, Clark and Jones (2000), A Guide to Estimating Irrigation Water Needs of Landscape Plantings in California, page 39.
 * @example totalWaterApplied(millimetresFromInches(3.72), 0.6) // 6.2 in
 */
export function totalWaterApplied(landscapeEvapotranspiration: Quantity<'mm'>, irrigationEfficiency: number): Quantity<'mm'> {
  if (!(irrigationEfficiency > 0 && irrigationEfficiency <= 1)) {
    throw new DomainError('IRRIGATION_EFFICIENCY_OUT_OF_DOMAIN', { irrigationEfficiency });
  }
  return millimetres(landscapeEvapotranspiration / irrigationEfficiency);
}
