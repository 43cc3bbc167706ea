import { DomainError } from '@rillbook/units/domain-error.js';
import type { Quantity } from '@rillbook/units/quantity.js';

const MINUTES_PER_HOUR = 60;

/**
 * Precipitation rate of a zone from its flow and area (total area method).
 *
 * PR = 60 · Q / A; in US units PR [in/h] = 96.25 · Q [gpm] / A [ft²], where 96.25 is 60 min/h · 12 in/ft / 7.4805 gal/ft³.
 *
 * @param flow - Flow of the zone. [L/min]
 * @param area - Area that it waters. [m2]
 * @returns Mean depth of water per hour of run time. [mm/h]
 * @throws {DomainError} `PRECIPITATION_RATE_OUT_OF_DOMAIN` when the area is not above zero or not finite, or the flow is below zero or not finite.
 * @source Total area method as printed on public extension and course pages; constant by arithmetic (96.3 in older texts).
 * @example precipitationRateFromFlow(litresPerMinuteFromGallonsPerMinute(12), squareMetresFromSquareFeet(1000)) // 29.34 mm/h, 1.155 in/h
 */
export function precipitationRateFromFlow(flow: Quantity<'L/min'>, area: Quantity<'m2'>): Quantity<'mm/h'> {
  const rate = (MINUTES_PER_HOUR * flow) / area;
  if (!(area > 0 && area < Infinity && flow >= 0 && Number.isFinite(rate)))
    throw new DomainError('PRECIPITATION_RATE_OUT_OF_DOMAIN', { flow, area });
  return rate as Quantity<'mm/h'>;
}

/**
 * Flow of a zone from its precipitation rate and area: the total area method turned round.
 *
 * Q = PR · A / 60
 *
 * @param precipitationRate - Mean depth of water per hour of run time. [mm/h]
 * @param area - Area that it waters. [m2]
 * @returns Flow of the zone. [L/min]
 * @throws {DomainError} `FLOW_OUT_OF_DOMAIN` when the area is not above zero or the rate is below zero or not finite.
 * @source The same as `precipitationRateFromFlow`.
 */
export function flowFromPrecipitationRate(precipitationRate: Quantity<'mm/h'>, area: Quantity<'m2'>): Quantity<'L/min'> {
  if (!(area > 0 && precipitationRate >= 0 && Number.isFinite(precipitationRate * area))) {
    throw new DomainError('FLOW_OUT_OF_DOMAIN', { precipitationRate, area });
  }
  return ((precipitationRate * area) / MINUTES_PER_HOUR) as Quantity<'L/min'>;
}
