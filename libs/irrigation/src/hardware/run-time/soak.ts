import { DomainError } from '@rillbook/units/domain-error.js';
import { finiteQuantity, type Quantity } from '@rillbook/units/quantity.js';

const MINUTES_PER_HOUR = 60;

/** Pause between cycles that guides recommend: 30 to 60 minutes after the last station (TAMU), an hour (UC San Joaquin). [min] */
export const recommendedSoak = { from: 30, to: 60 } as const;

/**
 * Pause after a cycle until the water that stands on the ground has gone in.
 *
 * t = 60 · ASA / IR
 *
 * @param surfaceAccumulation - Allowable surface accumulation ASA, all of it standing. [mm]
 * @param intakeRate - Basic intake rate IR of the soil. [mm/h]
 * @returns Minutes of pause; guides recommend `recommendedSoak`. [min]
 * @throws {DomainError} `SOAK_OUT_OF_DOMAIN` when the intake is not above zero, or the accumulation is below zero or not finite.
 * @source Arithmetic, from memory.
 * @example soakMinutes(0.20 in, 0.10 in/h) // 120 min
 */
export function soakMinutes(surfaceAccumulation: Quantity<'mm'>, intakeRate: Quantity<'mm/h'>): Quantity<'min'> {
  if (!(surfaceAccumulation >= 0 && intakeRate > 0)) throw new DomainError('SOAK_OUT_OF_DOMAIN', { surfaceAccumulation, intakeRate });
  return finiteQuantity((MINUTES_PER_HOUR * surfaceAccumulation) / intakeRate, 'SOAK_OUT_OF_DOMAIN');
}
