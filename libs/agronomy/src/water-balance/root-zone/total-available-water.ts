import { DomainError } from '@rillbook/units/domain-error.js';
import { millimetres } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/** Millimetres in a metre. */
const MILLIMETRES_PER_METRE = 1000;

/**
 * Total available water of the root zone, TAW (FAO-56, Eq. 82).
 *
 * TAW = 1000·(θFC - θWP)·Zr, Zr in metres
 *
 * @param fieldCapacity - Water content at field capacity, θFC. [m3/m3]
 * @param wiltingPoint - Water content at wilting point, θWP. [m3/m3]
 * @param rootDepth - Depth of the root zone, Zr. [mm]
 * @returns Water that the plants can take from a full root zone. [mm]
 * @throws {DomainError} `SOIL_WATER_OUT_OF_DOMAIN` when the contents are not 0 ≤ wilting point ≤ field capacity ≤ 1; `ROOT_DEPTH_OUT_OF_DOMAIN` when
 * the depth is below 0.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 82.
 * @example totalAvailableWater(0.15, 0.06, millimetres(800)) // 72, FAO-56 Example 36
 */
export function totalAvailableWater(fieldCapacity: number, wiltingPoint: number, rootDepth: Quantity<'mm'>): Quantity<'mm'> {
  if (!(wiltingPoint >= 0 && wiltingPoint <= fieldCapacity && fieldCapacity <= 1)) {
    throw new DomainError('SOIL_WATER_OUT_OF_DOMAIN', { fieldCapacity, wiltingPoint });
  }
  if (!(rootDepth >= 0)) throw new DomainError('ROOT_DEPTH_OUT_OF_DOMAIN', { rootDepth });
  return millimetres((fieldCapacity - wiltingPoint) * rootDepth);
}

/**
 * Total available water of the root zone from the soil's available water, TAW (FAO-56, Eq. 82).
 *
 * TAW = AW·Zr
 *
 * @param availableWater - Available water-holding capacity of the soil, AW. [mm/m]
 * @param rootDepth - Depth of the root zone, Zr. [mm]
 * @returns Water that the plants can take from a full root zone. [mm]
 * @throws {DomainError} `AVAILABLE_WATER_OUT_OF_DOMAIN` or `ROOT_DEPTH_OUT_OF_DOMAIN` when the one or the other is below 0.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 82.
 */
export function totalAvailableWaterOfSoil(availableWater: Quantity<'mm/m'>, rootDepth: Quantity<'mm'>): Quantity<'mm'> {
  if (!(availableWater >= 0)) throw new DomainError('AVAILABLE_WATER_OUT_OF_DOMAIN', { availableWater });
  if (!(rootDepth >= 0)) throw new DomainError('ROOT_DEPTH_OUT_OF_DOMAIN', { rootDepth });
  return millimetres((availableWater * rootDepth) / MILLIMETRES_PER_METRE);
}
