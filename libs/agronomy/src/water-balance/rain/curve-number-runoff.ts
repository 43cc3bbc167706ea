import { DomainError } from '@rillbook/units/domain-error.js';
import { millimetres, millimetresFromInches } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/** Share of the retention that is lost before any runoff, Ia/S (TR-55, Eq. 2-2). */
const INITIAL_ABSTRACTION_SHARE = 0.2;

/**
 * Potential retention of soil and cover after runoff begins, S (TR-55, Eq. 2-4).
 *
 * S = 1000/CN - 10, in inches
 *
 * @param curveNumber - Curve number of soil and cover. [–]
 * @returns Water that the ground can hold back. [mm]
 * @throws {DomainError} `CURVE_NUMBER_OUT_OF_DOMAIN` when not above 0 and up to 100.
 * @source USDA-NRCS (1986), Urban Hydrology for Small Watersheds, TR-55, Eq. 2-4.
 * @example curveNumberRetention(75) // 84.7 mm, 3.33 in
 */
export function curveNumberRetention(curveNumber: number): Quantity<'mm'> {
  if (!(curveNumber > 0 && curveNumber <= 100)) throw new DomainError('CURVE_NUMBER_OUT_OF_DOMAIN', { curveNumber });
  return millimetresFromInches(1000 / curveNumber - 10);
}

/**
 * Runoff of a storm by the curve number method, Q (TR-55, Eq. 2-1 to 2-4).
 *
 * S = 1000/CN - 10 (inches); Q = (P - 0.2·S)² / (P + 0.8·S) where P > 0.2·S, else 0
 *
 * @param rain - Rain of the storm or day. [mm]
 * @param curveNumber - Curve number of soil and cover. [–]
 * @returns Rain that runs off. [mm]
 * @throws {DomainError} `CURVE_NUMBER_OUT_OF_DOMAIN` when not above 0 and up to 100.
 * @source USDA-NRCS (1986), Urban Hydrology for Small Watersheds, TR-55, Eq. 2-1 to 2-4.
 * @example curveNumberRunoff(millimetresFromInches(6), 75) // 83.4 mm, 3.28 in, TR-55 Table 2-1
 */
export function curveNumberRunoff(rain: Quantity<'mm'>, curveNumber: number): Quantity<'mm'> {
  return retainedRunoff(rain, curveNumberRetention(curveNumber));
}

/**
 * Runoff of a storm from the retention of the ground, Q (TR-55, Eq. 2-3).
 *
 * Q = (P - 0.2·S)² / (P + 0.8·S) where P > 0.2·S, else 0
 *
 * @param rain - Rain of the storm or day. [mm]
 * @param retention - Potential retention of the ground, S. [mm]
 * @returns Rain that runs off. [mm]
 * @source USDA-NRCS (1986), Urban Hydrology for Small Watersheds, TR-55, Eq. 2-3.
 */
export function retainedRunoff(rain: Quantity<'mm'>, retention: Quantity<'mm'>): Quantity<'mm'> {
  const excess = rain - INITIAL_ABSTRACTION_SHARE * retention;
  // A share of what fell, so that no rain, however little, runs off as more than itself.
  return millimetres(excess <= 0 ? 0 : excess * (excess / (rain + (1 - INITIAL_ABSTRACTION_SHARE) * retention)));
}
