import { DomainError } from '@rillbook/units/domain-error.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/** Share of cover from which a planting counts as one surface. */
const FULL_COVER = 0.8;

/**
 * Plant factor of a hydrozone of several plants: that of the thirstiest.
 *
 * @param plantFactors - Plant factors of the plants that share the zone. [–], one per plant
 * @returns The highest. [–]
 * @throws {DomainError} `HYDROZONE_EMPTY` when there is none; `PLANT_FACTOR_OUT_OF_DOMAIN` when one is not a finite number of at least 0.
 * @source SLIDE rules behind ANSI/ASABE S623.1 (Kjelgren, Beeson, Pittenger and Montague 2016), read in an abstract.
 */
export function hydrozonePlantFactor(plantFactors: readonly number[]): number {
  if (plantFactors.length === 0) throw new DomainError('HYDROZONE_EMPTY');
  const wrong = plantFactors.find((factor) => !(factor >= 0 && factor < Infinity));
  if (wrong !== undefined) throw new DomainError('PLANT_FACTOR_OUT_OF_DOMAIN', { plantFactor: wrong });
  return Math.max(...plantFactors);
}

/**
 * Area that a planting transpires from: the bed where leaves cover 80 % of it or more, else the leaves' own area.
 *
 * @param bedArea - Area of the bed. [m2]
 * @param canopyArea - Ground that the plants' leaves cover. [m2]
 * @returns The area to be watered by. [m2]
 * @throws {DomainError} `CANOPY_OUT_OF_DOMAIN` when the canopy is below 0 or above the bed, or the bed is not above 0 and finite.
 * @source SLIDE rules behind ANSI/ASABE S623.1 (Kjelgren, Beeson, Pittenger and Montague 2016), read in an abstract.
 */
export function transpiringArea(bedArea: Quantity<'m2'>, canopyArea: Quantity<'m2'>): Quantity<'m2'> {
  if (!(bedArea > 0 && bedArea < Infinity && canopyArea >= 0 && canopyArea <= bedArea))
    throw new DomainError('CANOPY_OUT_OF_DOMAIN', { bedArea, canopyArea });
  return canopyArea >= FULL_COVER * bedArea ? bedArea : canopyArea;
}
