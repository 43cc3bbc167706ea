import type { InputName, UncertainInput } from './uncertain-input.js';
import { type UncertainLitres, varianceOf } from './uncertain-litres.js';

/** One input's part in a volume's variance; `subjectId` is the zone, controller or meter it belongs to, null for the weather. */
export interface InputShare {
  readonly input: InputName;
  readonly subjectId: string | null;
  readonly varianceShare: number;
}

/** How many inputs are named: enough to say what to measure next. */
const MOST_NAMED = 5;

/** Below this share an input is floating-point dust. */
const SMALLEST_SHARE = 1e-9;

/**
 * The inputs that make a volume uncertain, the largest share of its variance first.
 *
 * @param volume - The volume with what each input does to it. [L]
 * @returns At most five inputs with their shares of the variance; none where nothing is uncertain. [–]
 */
export function rankedInputs(volume: UncertainLitres): readonly InputShare[] {
  const { inputs, effects } = volume;
  const variance = varianceOf(volume);
  const ranked: InputShare[] = [];
  for (const at of largestEffects(effects)) {
    const square = (effects[at] as number) * (effects[at] as number);
    if (!(square > SMALLEST_SHARE * variance)) break;
    const { input, subjectId } = inputs[at] as UncertainInput;
    ranked.push({ input, subjectId, varianceShare: square / variance });
  }
  return ranked;
}

// The largest first, and of two alike the one named first: an account has many inputs, and few are asked for.
function largestEffects(effects: readonly number[]): readonly number[] {
  const largest: number[] = [];
  let least = -1;
  for (let each = 0; each < effects.length; each += 1) {
    const size = Math.abs(effects[each] as number);
    if (largest.length === MOST_NAMED && !(size > least)) continue;
    if (largest.length === MOST_NAMED) largest.pop();
    let at = largest.length;
    for (; at > 0 && size > Math.abs(effects[largest[at - 1] as number] as number); at -= 1) largest[at] = largest[at - 1] as number;
    largest[at] = each;
    least = Math.abs(effects[largest.at(-1) as number] as number);
  }
  return largest;
}
