import type { UncertainLitres } from './uncertain-litres.js';

/** An uncertain input by kind. */
export type InputName =
  | 'area'
  | 'plantFactor'
  | 'rootStorage'
  | 'uniformity'
  | 'eto'
  | 'rain'
  | 'flow'
  | 'precipitationRate'
  | 'handVolume'
  | 'meter'
  | 'registerResolution'
  | 'apportioning'
  | 'indoor'
  | 'rainSensor'
  | 'settingsFromWeather'
  | 'filledWeather'
  | 'filledSettings'
  | 'filledReadings';

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
 * Key of an uncertain input: the same key means the same input, wherever it is used.
 *
 * @param input - The kind of input. [code]
 * @param subjectId - The zone, controller or meter that it belongs to; null for the weather. [code]
 * @returns The key. [code]
 */
export function inputKey(input: InputName, subjectId: string | null): string {
  return subjectId === null ? input : `${input} ${subjectId}`;
}

/**
 * The inputs that make a volume uncertain, the largest share of its variance first.
 *
 * @param volume - The volume with its parts. [L]
 * @returns At most five inputs with their shares of the variance; none where nothing is uncertain. [–]
 */
export function rankedInputs(volume: UncertainLitres): readonly InputShare[] {
  let variance = 0;
  for (const part of volume.parts.values()) variance += part * part;
  return largestSquares(volume.parts)
    .filter(([, square]) => square > SMALLEST_SHARE * variance)
    .map(([key, square]) => {
      const space = key.indexOf(' ');
      const input = (space < 0 ? key : key.slice(0, space)) as InputName;
      return { input, subjectId: space < 0 ? null : key.slice(space + 1), varianceShare: square / variance };
    });
}

// The largest first, and of two alike the one named first: an account has many inputs, and few are asked for.
function largestSquares(parts: ReadonlyMap<string, number>): readonly (readonly [string, number])[] {
  const largest: (readonly [string, number])[] = [];
  for (const [key, part] of parts) {
    const square = part * part;
    if (largest.length === MOST_NAMED && !(square > (largest.at(-1) as readonly [string, number])[1])) continue;
    let at = largest.length;
    while (at > 0 && square > (largest[at - 1] as readonly [string, number])[1]) at -= 1;
    largest.splice(at, 0, [key, square]);
    if (largest.length > MOST_NAMED) largest.pop();
  }
  return largest;
}
