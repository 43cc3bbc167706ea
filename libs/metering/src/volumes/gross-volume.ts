import { runTimeMultiplier } from '@rillbook/irrigation/hardware/uniformity/run-time-multiplier.js';
import { DomainError } from '@rillbook/units/domain-error.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { litresFromDepth } from '@rillbook/units/volume.js';

/** What turns a net depth into water from the valve. */
export interface GrossInputs {
  readonly areaM2: number;
  readonly duLq: number;
  readonly leachingFraction: number;
}

/**
 * Gross volume of a net depth of irrigation, for every method.
 *
 * V = I · A / ((0.4 + 0.6 · DU_LQ) · (1 − LF)); in US units I [in] · A [ft²] · 0.6233 gal
 *
 * @param netDepth - Net depth that the plants needed. [mm]
 * @param zone - Area, uniformity of the low quarter and leaching fraction (0 where none is given). [m2] and [–]
 * @returns Volume through the valve. [L]
 * @throws {DomainError} `LEACHING_FRACTION_OUT_OF_DOMAIN` outside 0 to below 1; `UNIFORMITY_OUT_OF_DOMAIN` for the uniformity.
 * @source EPA WaterSense water budget approach (from memory), with effective rain already taken off and a leaching fraction added.
 * @example grossVolume(3.9 in, { 1,000 ft², DU 0.65, LF 0 }) // 3,077 gal
 */
export function grossVolume(netDepth: Quantity<'mm'>, zone: GrossInputs): Quantity<'L'> {
  const { areaM2, duLq, leachingFraction } = zone;
  if (!(leachingFraction >= 0 && leachingFraction < 1)) throw new DomainError('LEACHING_FRACTION_OUT_OF_DOMAIN', { leachingFraction });
  const net = litresFromDepth(netDepth, areaM2 as Quantity<'m2'>);
  return ((net * runTimeMultiplier(duLq)) / (1 - leachingFraction)) as Quantity<'L'>;
}
