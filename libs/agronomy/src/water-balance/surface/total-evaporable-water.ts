import { DomainError } from '@rillbook/units/domain-error.js';
import { millimetres } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/** Share of the wilting point's water that stays when the surface has dried in the air (FAO-56, Eq. 73). */
const AIR_DRY_SHARE = 0.5;

/**
 * Total evaporable water of the surface layer, TEW (FAO-56, Eq. 73).
 *
 * TEW = 1000·(θFC - 0.5·θWP)·Ze, Ze in metres
 *
 * @param fieldCapacity - Water content at field capacity, θFC. [m3/m3]
 * @param wiltingPoint - Water content at wilting point, θWP. [m3/m3]
 * @param evaporationDepth - Depth of the layer that dries by evaporation, Ze; commonly 100 to 150. [mm]
 * @returns Water that can evaporate from the wetted layer. [mm]
 * @throws {DomainError} `SOIL_WATER_OUT_OF_DOMAIN` when the contents are not 0 ≤ wilting point ≤ field capacity ≤ 1.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 73.
 * @example totalEvaporableWater(0.225, 0.1, millimetres(114.3)) // 20.0
 */
export function totalEvaporableWater(fieldCapacity: number, wiltingPoint: number, evaporationDepth: Quantity<'mm'>): Quantity<'mm'> {
  if (!(wiltingPoint >= 0 && wiltingPoint <= fieldCapacity && fieldCapacity <= 1)) {
    throw new DomainError('SOIL_WATER_OUT_OF_DOMAIN', { fieldCapacity, wiltingPoint });
  }
  return millimetres((fieldCapacity - AIR_DRY_SHARE * wiltingPoint) * evaporationDepth);
}
