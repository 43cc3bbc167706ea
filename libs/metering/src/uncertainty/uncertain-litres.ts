import type { UncertainInput } from './uncertain-input.js';

/**
 * A volume with what each uncertain input does to it: `effects` are litres per standard deviation of the input at the same place of `inputs`,
 * in which each input stands once.
 *
 * Two volumes that lean on one input share it, so that a difference lets it cancel or add as it really does.
 */
export interface UncertainLitres {
  readonly litres: number;
  readonly inputs: readonly UncertainInput[];
  readonly effects: readonly number[];
}

/**
 * A volume of which nothing is uncertain.
 *
 * @param litres - The volume. [L]
 * @returns The volume without inputs. [L]
 */
export function exactly(litres: number): UncertainLitres {
  return { litres, inputs: [], effects: [] };
}

/** Where an input stands in the sum under way, by its place; what an earlier sum left is told by the input that stands there. */
let standsAt = new Int32Array(256);

/**
 * Weighted sum of uncertain volumes: first-order propagation, inputs shared between them counted once.
 *
 * V = Σ wᵢ·Vᵢ; effect of input k = Σ wᵢ·effectᵢₖ
 *
 * @param terms - Volumes of one property with their weights: 1 adds, -1 subtracts. [L] and [–]
 * @returns The sum with what each input does to it. [L]
 * @source JCGM 100:2008 (Guide to the expression of uncertainty in measurement), section 5.2: correlated inputs.
 */
export function combined(terms: readonly (readonly [number, UncertainLitres])[]): UncertainLitres {
  const only = terms.length === 1 ? terms[0] : undefined;
  if (only?.[0] === 1) return only[1];
  const inputs: UncertainInput[] = [];
  const effects: number[] = [];
  let litres = 0;
  for (const [weight, term] of terms) {
    litres += weight * term.litres;
    addEffects(inputs, effects, weight, term);
  }
  return { litres, inputs, effects };
}

function addEffects(inputs: UncertainInput[], effects: number[], weight: number, term: UncertainLitres): void {
  const own = term.inputs;
  for (let each = 0; each < own.length; each += 1) {
    const input = own[each] as UncertainInput;
    const effect = weight * (term.effects[each] as number);
    if (input.place >= standsAt.length) grow(input.place);
    const at = standsAt[input.place] as number;
    if (at < inputs.length && inputs[at] === input) {
      effects[at] = (effects[at] as number) + effect;
    } else {
      standsAt[input.place] = inputs.length;
      inputs.push(input);
      effects.push(effect);
    }
  }
}

function grow(place: number): void {
  const larger = new Int32Array(2 * (place + 1));
  larger.set(standsAt);
  standsAt = larger;
}

/**
 * Variance of an uncertain volume: the sum of its inputs' squared effects, the inputs being independent of each other.
 *
 * @param volume - The volume with what each input does to it. [L]
 * @returns Variance. [L2]
 * @source JCGM 100:2008, Eq. 10.
 */
export function varianceOf(volume: UncertainLitres): number {
  const { effects } = volume;
  let variance = 0;
  for (let each = 0; each < effects.length; each += 1) variance += (effects[each] as number) * (effects[each] as number);
  return variance;
}

/**
 * Standard deviation of an uncertain volume: the root of its variance.
 *
 * @param volume - The volume with what each input does to it. [L]
 * @returns Standard deviation. [L]
 * @source JCGM 100:2008, Eq. 10.
 */
export function standardDeviation(volume: UncertainLitres): number {
  return Math.sqrt(varianceOf(volume));
}
