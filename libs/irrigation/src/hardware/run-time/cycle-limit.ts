import { DomainError } from '@rillbook/units/domain-error.js';
import type { Quantity } from '@rillbook/units/quantity.js';

const MINUTES_PER_HOUR = 60;

/**
 * Longest cycle before water runs off.
 *
 * RTmax = 60 · ASA / (PR − IR) where PR exceeds IR, otherwise there is no limit.
 *
 * @param surfaceAccumulation - Allowable surface accumulation ASA: the depth that may stand before it runs. [mm]
 * @param precipitationRate - Precipitation rate PR of the zone. [mm/h]
 * @param intakeRate - Basic intake rate IR of the soil. [mm/h]
 * @returns Longest run without a pause, or null where the soil takes all that comes. [min]
 * @throws {DomainError} `CYCLE_LIMIT_OUT_OF_DOMAIN` when a value is below zero or not finite.
 * @source Irrigation Association (2005) cycle-and-soak formula as coded in a university package.
 * @example cycleLimit(ASA 0.20 in, PR 1.6 in/h, IR 0.10 in/h) // 8.0 min
 */
export function cycleLimit(
  surfaceAccumulation: Quantity<'mm'>,
  precipitationRate: Quantity<'mm/h'>,
  intakeRate: Quantity<'mm/h'>,
): Quantity<'min'> | null {
  if (![surfaceAccumulation, precipitationRate, intakeRate].every((value) => Number.isFinite(value) && value >= 0)) {
    throw new DomainError('CYCLE_LIMIT_OUT_OF_DOMAIN', { surfaceAccumulation, precipitationRate, intakeRate });
  }
  if (precipitationRate <= intakeRate) return null;
  return ((MINUTES_PER_HOUR * surfaceAccumulation) / (precipitationRate - intakeRate)) as Quantity<'min'>;
}

/**
 * Number of cycles that a run is split into so that none runs off.
 *
 * Cycles = ceil(total / RTmax)
 *
 * @param totalMinutes - Minutes of the whole run. [min]
 * @param longestCycle - Longest run without a pause; null is no limit. [min]
 * @returns Number of cycles, at least one. [–]
 * @throws {DomainError} `CYCLE_LIMIT_OUT_OF_DOMAIN` when the limit is not above zero or the total is below zero.
 */
export function cyclesFor(totalMinutes: Quantity<'min'>, longestCycle: Quantity<'min'> | null): number {
  if (!(totalMinutes >= 0) || (longestCycle !== null && !(longestCycle > 0))) {
    throw new DomainError('CYCLE_LIMIT_OUT_OF_DOMAIN', { totalMinutes, longestCycle });
  }
  // A hair over a whole number is floating-point dust, not another cycle.
  return longestCycle === null ? 1 : Math.max(1, Math.ceil(totalMinutes / longestCycle - 1e-9));
}
