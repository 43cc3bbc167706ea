import { DomainError } from '@rillbook/units/domain-error.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { type RegisterPair, type RegisterScale, registerVolume, resolutionSd } from './register-volume.js';

/** A zone's flow as a test told it; how far it may be off is null where nobody has said how finely the register reads. */
export interface TestedFlow {
  readonly flow: Quantity<'L/min'>;
  readonly sd: Quantity<'L/min'> | null;
}

/** A register that is read more coarsely than this says too little of a zone's flow to be put on record. An assumption. [–] */
const COARSEST = 0.1;

/**
 * Flow of a zone that ran alone between two readings of its meter.
 *
 * Q = V / t; sd(Q) = sd(V) / t, from the register's resolution alone
 *
 * @param registers - Register before and after. [any]
 * @param scale - Unit, multiplier and number of digits of the meter. [code]
 * @param resolution - The smallest step that is read, in register units; null where nobody has said. [any]
 * @param minutes - How long the zone ran. [min]
 * @returns The flow and its standard deviation. [L/min]
 * @throws {DomainError} `FLOW_TEST_OUT_OF_DOMAIN` when the time is not above zero or not finite; `REGISTER_RUNS_BACKWARDS` or
 * `REGISTER_OUT_OF_DOMAIN` as for two readings.
 * @example 18,715.9 to 18,716.3 CCF in 15 min // 19.9 gal/min
 */
export function flowOfTest(registers: RegisterPair, scale: RegisterScale, resolution: number | null, minutes: Quantity<'min'>): TestedFlow {
  if (!(minutes > 0 && Number.isFinite(minutes))) throw new DomainError('FLOW_TEST_OUT_OF_DOMAIN', { minutes });
  const { litres } = registerVolume(registers, scale);
  const sd = resolution === null ? null : ((resolutionSd(resolution, scale) / minutes) as Quantity<'L/min'>);
  return { flow: (litres / minutes) as Quantity<'L/min'>, sd };
}

/**
 * Minutes that a zone must run until its meter can tell its flow.
 *
 * t = t₀ · (sd(Q) / Q) / 0.1: the register's rounding stays, the volume grows
 *
 * @param tested - What a test told. [L/min]
 * @param minutes - How long that test was. [min]
 * @returns At most the test's own length where it was long enough; null where nothing ran, or the resolution is not known. [min]
 */
export function minutesToTell(tested: TestedFlow, minutes: Quantity<'min'>): Quantity<'min'> | null {
  const { flow, sd } = tested;
  if (sd === null || !(flow > 0)) return null;
  return ((minutes * sd) / (flow * COARSEST)) as Quantity<'min'>;
}

/**
 * Whether a test tells a zone's flow well enough to be put on record.
 *
 * @param tested - What a test told. [L/min]
 * @returns True where water ran and the register is read finely enough, or nobody has said how finely. [–]
 */
export const tellsFlow = (tested: TestedFlow): boolean => tested.flow > 0 && (tested.sd === null || tested.sd <= COARSEST * tested.flow);
