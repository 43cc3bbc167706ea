import { DomainError } from '@rillbook/units/domain-error.js';
import { millimetresFromMetres, metresFromFeet, millimetres } from '@rillbook/units/length.js';
import { squareMetresFromSquareFeet } from '@rillbook/units/area.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { litresFromGallons } from '@rillbook/units/volume.js';

/** Gallons in an acre-foot of soil for each percent of organic matter: widely quoted and optimistic. */
const GALLONS_PER_ACRE_FOOT = 16_500;

/** Square feet in an acre. */
const SQUARE_FEET_PER_ACRE = 43_560;

/**
 * Water that more organic matter may let a soil hold, at most: an optimistic upper bound, never a saving to be promised.
 *
 * depth = percent · 16,500 gal / (acre · ft) · soil depth
 *
 * @param organicMatterPercent - Increase of the soil's organic matter, in points of percent. [%]
 * @param soilDepth - Depth of the soil that was amended. [mm]
 * @returns Depth of water that it may hold more, at most. [mm]
 * @throws {DomainError} `ORGANIC_MATTER_OUT_OF_DOMAIN` when a value is below 0 or the increase above 100.
 * @source MSU Extension citing ATTRA, widely quoted: 16,500 gal per acre-foot for 1 %; measured gains are often smaller.
 */
export function organicMatterWaterAtMost(organicMatterPercent: number, soilDepth: Quantity<'mm'>): Quantity<'mm'> {
  if (!(organicMatterPercent >= 0 && organicMatterPercent <= 100 && soilDepth >= 0)) {
    throw new DomainError('ORGANIC_MATTER_OUT_OF_DOMAIN', { organicMatterPercent, soilDepth });
  }
  const perAcre = litresFromGallons(GALLONS_PER_ACRE_FOOT) / squareMetresFromSquareFeet(SQUARE_FEET_PER_ACRE);
  return millimetres((organicMatterPercent * perAcre * soilDepth) / millimetresFromMetres(metresFromFeet(1)));
}
