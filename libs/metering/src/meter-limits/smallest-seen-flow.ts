import { DomainError } from '@rillbook/units/domain-error.js';
import { litresPerMinute, litresPerMinuteFromGallonsPerMinute } from '@rillbook/units/flow.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { displacementMeterFlows } from './displacement-meter.js';

/** Flow below which no meter of a property is believed, 0.15 gpm. Common practice, no source. */
const LEAST_BELIEVED = litresPerMinuteFromGallonsPerMinute(0.15);

/** Steps of the register between two readings that make a flow: one step may be rounding. */
const STEPS = 2;

const MINUTES_PER_HOUR = 60;

/**
 * Smallest steady flow that a meter can show.
 *
 * Q = max(0.15 gpm, minimum test flow of the size, 2 · resolution / (60 · hours))
 *
 * @param size - Nominal size of the meter, or null where it is not known; a size that the table lacks counts as not known. [mm]
 * @param resolution - Step of the register, or null where it is not known. [L]
 * @param hours - Time between two readings. [h]
 * @returns Smallest flow; smaller ones are not seen by this meter. A bound from below where size or resolution are not known. [L/min]
 * @throws {DomainError} `SMALLEST_FLOW_OUT_OF_DOMAIN` when the hours are not above zero or the resolution is below zero or not finite;
 * `METER_SIZE_OUT_OF_DOMAIN` for the size.
 * @source Minimum test flow: COMAR 20.70.06.03. The floor and the two steps are common practice without a source.
 * @example a 2 in meter read to the gallon each hour: 7.57 L/min, 2 gpm, by its size
 */
export function smallestSeenFlow(size: Quantity<'mm'> | null, resolution: Quantity<'L'> | null, hours: number): Quantity<'L/min'> {
  const step = resolution ?? 0;
  if (!(hours > 0 && Number.isFinite(hours) && step >= 0)) throw new DomainError('SMALLEST_FLOW_OUT_OF_DOMAIN', { resolution, hours });
  const bySize = size === null ? null : displacementMeterFlows(size);
  const byRegister = (STEPS * step) / (MINUTES_PER_HOUR * hours);
  return litresPerMinute(Math.max(LEAST_BELIEVED, bySize?.minimumTestFlow ?? 0, byRegister));
}

/**
 * Whether a meter sees a steady flow. Where it does not, its silence says nothing about that flow.
 *
 * @param flow - The flow in question, such as a leak or a drip zone. [L/min]
 * @param smallest - Smallest flow that the meter sees, from `smallestSeenFlow`. [L/min]
 * @returns Seen, or not seen by this meter. [code]
 * @throws {DomainError} `SMALLEST_FLOW_OUT_OF_DOMAIN` when a flow is below zero or not finite.
 */
export function seenByMeter(flow: Quantity<'L/min'>, smallest: Quantity<'L/min'>): 'seen' | 'not seen by this meter' {
  if (![flow, smallest].every((value) => value >= 0 && Number.isFinite(value))) {
    throw new DomainError('SMALLEST_FLOW_OUT_OF_DOMAIN', { flow, smallest });
  }
  return flow < smallest ? 'not seen by this meter' : 'seen';
}
