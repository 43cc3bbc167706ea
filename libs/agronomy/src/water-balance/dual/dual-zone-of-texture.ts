import { millimetres } from '@rillbook/units/length.js';
import { availableWater } from '../../soil/available-water.js';
import type { SoilTexture } from '../../soil/soil-texture.js';
import { evaporableWaterByTexture } from '../surface/evaporable-water-by-texture.js';
import type { DualZone } from './dual-zone.js';

/**
 * Zone of the dual balance where only its texture, plants and mulch are known: nothing runs off and nothing rises.
 *
 * @param texture - Texture of the soil. [code]
 * @param tableFraction - Depletion fraction of the plants, p. [–]
 * @param mulchCover - Share of the ground under organic mulch. [–]
 * @returns Soil, surface and roots of the zone. [mm]
 * @source Available water as `availableWater`; evaporable water by Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Table 19.
 */
export function dualZoneOfTexture(texture: SoilTexture, tableFraction: number, mulchCover: number): DualZone {
  const { readilyEvaporableWater, totalEvaporableWater } = evaporableWaterByTexture(texture);
  return {
    readilyEvaporableWater,
    totalEvaporableWater,
    availableWater: availableWater(texture),
    tableFraction,
    mulchCover,
    curveNumber: null,
    capillaryRise: millimetres(0),
  };
}
