import type { Assignment, Ground } from '../pricing/assignment.js';
import type { SlotOption } from '../pricing/slots.js';
import type { LeafChoice } from './leaf-bound.kernel.js';

/**
 * What each slot is given, of the options' places.
 *
 * @param ground - The slots. [–]
 * @param options - Place of the option by slot; -1 is unused. [–]
 * @returns The options. [–]
 */
export function leafOf(ground: Ground, options: readonly number[]): readonly (SlotOption | null)[] {
  return ground.slots.map((slot, at) => slot.options[options[at] ?? -1] ?? null);
}

/**
 * Room for a choice of all zones.
 *
 * @param ground - The zones. [–]
 * @param prices - Prices of the limits' minutes to begin with. [–]
 * @returns Nothing chosen yet. [–]
 */
export function emptyChoice(ground: Ground, prices: Float64Array): LeafChoice {
  const { length } = ground.zones;
  return { program: new Int32Array(length), steps: new Int32Array(length), prices };
}

/**
 * The assignment that a choice comes to.
 *
 * @param options - What each slot is given. [–]
 * @param choice - Program and steps of each zone. [–]
 * @returns The assignment, its days not yet turned. [–]
 */
export function assigned(options: readonly (SlotOption | null)[], choice: LeafChoice): Assignment {
  return {
    options,
    patterns: options.map((option) => option?.days.patterns[0] ?? null),
    slotOf: [...choice.program],
    steps: [...choice.steps],
  };
}
