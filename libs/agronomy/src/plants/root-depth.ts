import { DomainError } from '@rillbook/units/domain-error.js';
import { millimetres, millimetresFromInches } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import type { Plants } from './plant-words.js';

/** Depth of the root zone that is watered, and whether it was assumed. */
export type RootDepth = { readonly rootDepth: Quantity<'mm'>; readonly assumed: boolean };

/**
 * Root depth by kind of plant, in inches as the guides print it: the middle of grass 6 to 10, groundcover and annuals 8 to 12, shrubs 18 to
 * 24, trees 24 to 36 (Arizona landscape watering guideline, Tucson); small plants 12 (City of Phoenix), for perennials, vegetables and mixed
 * zones; warm-season turf 12 (UC San Joaquin: irrigate turf to 8 to 12).
 */
const INCHES_BY_PLANTS: Readonly<Record<Plants, number>> = {
  'turf cool-season': 8,
  'turf warm-season': 12,
  trees: 30,
  shrubs: 21,
  groundcover: 10,
  perennials: 12,
  annuals: 10,
  vegetables: 12,
  mixed: 12,
};

/** Deepest root zone that is believed for irrigation. [mm] */
export const DEEPEST_ROOTS = millimetres(3000);

/**
 * Depth of the root zone of a zone's plants, Zr: as stated, else by kind of plant.
 *
 * @param stated - The depth that somebody stated, or null. [mm]
 * @param plants - What grows there, or null when not known; then as mixed. [code]
 * @returns The depth, and whether it was assumed. [mm]
 * @throws {DomainError} `ROOT_DEPTH_OUT_OF_DOMAIN` when stated and not above 0 and up to 3000 mm.
 * @source Arizona landscape watering guideline table (Tucson); City of Phoenix, watering depth by plant size; UC San Joaquin, turf.
 */
export function rootDepth(stated: Quantity<'mm'> | null, plants: Plants | null): RootDepth {
  if (stated === null) return { rootDepth: millimetresFromInches(INCHES_BY_PLANTS[plants ?? 'mixed']), assumed: true };
  if (!(stated > 0 && stated <= DEEPEST_ROOTS)) throw new DomainError('ROOT_DEPTH_OUT_OF_DOMAIN', { rootDepth: stated });
  return { rootDepth: millimetres(stated), assumed: false };
}
