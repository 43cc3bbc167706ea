import { millimetres } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { litres } from '@rillbook/units/volume.js';
import type { MeterEvidence } from '../../evidence/meter-evidence.js';
import { smallestSeenFlow } from '../../../meter-limits/smallest-seen-flow.js';

/** Steps of the register are counted over an hour, whatever the step of usage. [h] */
const HOURS = 1;

/**
 * Smallest steady flow that this meter's usage can show: a smaller one cannot be seen by this meter, and nothing is opened for it.
 *
 * Q = max(0.15 gpm, minimum test flow of the size, two steps of the register an hour)
 *
 * @param meter - Size, step of the register and usage of the meter. [code]
 * @returns Smallest flow, or null where there is no usage by steps. [L/min]
 * @throws {DomainError} `METER_SIZE_OUT_OF_DOMAIN` or `SMALLEST_FLOW_OUT_OF_DOMAIN` for a size or resolution that cannot be.
 * @source See `smallestSeenFlow`.
 */
export function smallestSteadyFlow(meter: Pick<MeterEvidence, 'sizeMm' | 'resolutionLitres' | 'usage'>): Quantity<'L/min'> | null {
  if (!meter.usage) return null;
  const resolution = Math.max(meter.usage.resolutionLitres ?? 0, meter.resolutionLitres ?? 0);
  return smallestSeenFlow(meter.sizeMm === null ? null : millimetres(meter.sizeMm), resolution > 0 ? litres(resolution) : null, HOURS);
}
