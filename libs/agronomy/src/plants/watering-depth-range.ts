import { millimetresFromInches } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/** Group of plants for which a depth of watering is published. */
export type DepthGroup = 'trees' | 'shrubs' | 'groundcover, cacti, annuals' | 'grass';

/** Size of plants in the short rule. */
export type PlantSize = 'small plants' | 'shrubs' | 'trees';

/** Depth to which water should go. */
export type WateringDepthRange = {
  /** Least. [mm] */
  readonly from: Quantity<'mm'>;
  /** Most. [mm] */
  readonly to: Quantity<'mm'>;
};

/** In inches, as the guideline prints them. */
const INCHES_BY_GROUP: Readonly<Record<DepthGroup, readonly [number, number]>> = {
  trees: [24, 36],
  shrubs: [18, 24],
  'groundcover, cacti, annuals': [8, 12],
  grass: [6, 10],
};

/** In feet: one, two, three. */
const FEET_BY_SIZE: Readonly<Record<PlantSize, number>> = { 'small plants': 1, shrubs: 2, trees: 3 };

const INCHES_IN_A_FOOT = 12;

/**
 * Published depth to which a group of plants is watered.
 *
 * @param plants - Group of plants. [code]
 * @returns Least and most. [mm]
 * @source Arizona landscape watering guideline table (Tucson).
 */
export function wateringDepthRange(plants: DepthGroup): WateringDepthRange {
  const [from, to] = INCHES_BY_GROUP[plants];
  return { from: millimetresFromInches(from), to: millimetresFromInches(to) };
}

/**
 * Depth to which plants are watered by the short rule of one, two and three feet.
 *
 * @param plants - Plants by size. [code]
 * @returns Depth. [mm]
 * @source City of Phoenix, watering depth by plant size.
 */
export function wateringDepthBySize(plants: PlantSize): Quantity<'mm'> {
  return millimetresFromInches(FEET_BY_SIZE[plants] * INCHES_IN_A_FOOT);
}
