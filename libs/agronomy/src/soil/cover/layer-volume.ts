import { DomainError } from '@rillbook/units/domain-error.js';
import { finiteQuantity, type Quantity } from '@rillbook/units/quantity.js';

/** Millimetres in a metre. */
const MILLIMETRES_PER_METRE = 1000;

/**
 * Volume of a layer of mulch or compost.
 *
 * V = A · depth; in US units yd³ = ft² · in / 324
 *
 * @param area - Area that is covered. [m2]
 * @param layerDepth - Depth of the layer. [mm]
 * @returns Volume, loose as it lies. [m3]
 * @throws {DomainError} `LAYER_OUT_OF_DOMAIN` when area or depth is below 0 or not finite.
 * @source Arithmetic; supplier coverage charts print the same.
 * @example layerVolume(1,000 ft², 1 in) // 2.36 m³, 3.086 yd³
 */
export function layerVolume(area: Quantity<'m2'>, layerDepth: Quantity<'mm'>): Quantity<'m3'> {
  if (!(area >= 0 && layerDepth >= 0)) throw new DomainError('LAYER_OUT_OF_DOMAIN', { area, layerDepth });
  return finiteQuantity((area * layerDepth) / MILLIMETRES_PER_METRE, 'LAYER_OUT_OF_DOMAIN');
}

/**
 * Area that a volume of mulch or compost covers.
 *
 * A = V / depth
 *
 * @param layerVolume - Volume, loose as it lies. [m3]
 * @param layerDepth - Depth of the layer. [mm]
 * @returns Area that is covered. [m2]
 * @throws {DomainError} `LAYER_OUT_OF_DOMAIN` when the volume is below 0 or the depth not above 0.
 * @source Arithmetic; supplier coverage charts print the same.
 * @example coverage(1 yd³, 3 in) // 10.03 m², 108 ft²
 */
export function coverage(layerVolume: Quantity<'m3'>, layerDepth: Quantity<'mm'>): Quantity<'m2'> {
  if (!(layerVolume >= 0 && layerDepth > 0)) throw new DomainError('LAYER_OUT_OF_DOMAIN', { layerVolume, layerDepth });
  return finiteQuantity((layerVolume * MILLIMETRES_PER_METRE) / layerDepth, 'LAYER_OUT_OF_DOMAIN');
}
