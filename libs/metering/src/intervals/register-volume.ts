import { DomainError } from '@rillbook/units/domain-error.js';
import { litresFrom, type VolumeUnit } from '@rillbook/units/volume.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/** How a meter counts: register difference times multiplier in its unit; `digits` is where it rolls over, null where nobody has said. */
export interface RegisterScale {
  readonly unit: VolumeUnit;
  readonly multiplier: number;
  readonly digits: number | null;
}

/** Two registers in one meter's life; a swap puts the old meter's last and the new meter's first register between them. */
export interface RegisterPair {
  readonly from: number;
  readonly to: number;
}

/** A volume between two readings, and whether the register passed its highest number. */
export interface RegisterVolume {
  readonly litres: Quantity<'L'>;
  readonly rolledOver: boolean;
}

/**
 * Volume between two readings of one register.
 *
 * V = (to − from) · multiplier · unit; a register that has passed its highest number counts 10^digits more
 *
 * @param registers - Register before and after. [any]
 * @param scale - Unit, multiplier and number of digits of the meter. [code]
 * @returns The volume, and whether the register rolled over. [L]
 * @throws {DomainError} `REGISTER_RUNS_BACKWARDS` when the later is lower and the number of digits is not known; `REGISTER_OUT_OF_DOMAIN`
 * when a register is below zero, not finite or has more digits than the meter, or the multiplier is not above zero.
 * @example registerVolume({ from: 99_990, to: 15 }, { unit: 'CCF', multiplier: 1, digits: 5 }) // 25 CCF
 */
export function registerVolume(registers: RegisterPair, scale: RegisterScale): RegisterVolume {
  const { from, to } = registers;
  const modulus = scale.digits === null ? Number.POSITIVE_INFINITY : 10 ** scale.digits;
  if (!([from, to].every((register) => register >= 0 && register < modulus) && scale.multiplier > 0)) {
    throw new DomainError('REGISTER_OUT_OF_DOMAIN', { from, to, digits: scale.digits, multiplier: scale.multiplier });
  }
  const rolledOver = to < from;
  if (rolledOver && scale.digits === null) throw new DomainError('REGISTER_RUNS_BACKWARDS', { from, to });
  const difference = rolledOver ? to - from + modulus : to - from;
  return { litres: litresFrom(difference * scale.multiplier, scale.unit), rolledOver };
}

/**
 * Volume between a reading of the old meter and one of the new, across a swap: a swap is not a misread.
 *
 * V = (last − before) on the old meter + (after − first) on the new
 *
 * @param old - The reading before the swap and the old meter's last register. [any]
 * @param oldScale - How the old meter counts. [code]
 * @param replacement - The new meter's first register and the reading after the swap. [any]
 * @param replacementScale - How the new meter counts. [code]
 * @returns The volume through both, and whether a register rolled over. [L]
 * @throws {DomainError} `REGISTER_RUNS_BACKWARDS` or `REGISTER_OUT_OF_DOMAIN` as for one register.
 */
export function volumeAcrossSwap(
  old: RegisterPair,
  oldScale: RegisterScale,
  replacement: RegisterPair,
  replacementScale: RegisterScale,
): RegisterVolume {
  const before = registerVolume(old, oldScale);
  const after = registerVolume(replacement, replacementScale);
  return { litres: (before.litres + after.litres) as Quantity<'L'>, rolledOver: before.rolledOver || after.rolledOver };
}

/**
 * Standard deviation of a difference of two readings from the register's resolution alone.
 *
 * sd = r · multiplier · unit · √(2 / 12): two independent roundings, each uniform over the resolution r
 *
 * @param resolution - The smallest step that is read. [any], in register units
 * @param scale - Unit and multiplier of the meter. [code]
 * @returns Standard deviation of a usage interval between two readings. [L]
 * @throws {DomainError} `REGISTER_OUT_OF_DOMAIN` when the resolution is below zero.
 * @source JCGM 100:2008, section 4.3.7: a uniform distribution of width a has the variance a²/12.
 */
export function resolutionSd(resolution: number, scale: RegisterScale): Quantity<'L'> {
  if (!(resolution >= 0 && scale.multiplier > 0))
    throw new DomainError('REGISTER_OUT_OF_DOMAIN', { resolution, multiplier: scale.multiplier });
  return litresFrom(resolution * scale.multiplier * Math.sqrt(1 / 6), scale.unit);
}
