import type { Quantity } from '@rillbook/units/quantity.js';
import { flowFromPrecipitationRate } from './precipitation-rate.js';

/** Flow and precipitation rate that differ by more than this share are a warning (this product's import rule). */
const LARGEST_AGREEING_SHARE = 0.1;

/**
 * Whether a zone's recorded flow and precipitation rate tell the same story.
 *
 * @param flow - Flow as recorded. [L/min]
 * @param precipitationRate - Precipitation rate as recorded. [mm/h]
 * @param area - Area of the zone. [m2]
 * @returns False when they disagree by more than a tenth of the recorded flow. [–]
 * @throws {DomainError} `FLOW_OUT_OF_DOMAIN` when the area is not above zero or the rate is below zero.
 */
export function flowAgreesWithRate(flow: Quantity<'L/min'>, precipitationRate: Quantity<'mm/h'>, area: Quantity<'m2'>): boolean {
  const derived = flowFromPrecipitationRate(precipitationRate, area);
  return Math.abs(derived - flow) <= LARGEST_AGREEING_SHARE * Math.abs(flow) * (1 + 1e-9);
}
