/**
 * A volume with what each uncertain input does to it: litres per standard deviation of that input, by the input's key.
 *
 * Two volumes that lean on one input share its key, so that a difference lets it cancel or add as it really does.
 */
export interface UncertainLitres {
  readonly litres: number;
  readonly parts: ReadonlyMap<string, number>;
}

/**
 * A volume of which nothing is uncertain.
 *
 * @param litres - The volume. [L]
 * @returns The volume without parts. [L]
 */
export function exactly(litres: number): UncertainLitres {
  return { litres, parts: new Map() };
}

/**
 * Weighted sum of uncertain volumes: first-order propagation, inputs shared between them counted once.
 *
 * V = Σ wᵢ·Vᵢ; part of input k = Σ wᵢ·partᵢₖ
 *
 * @param terms - Volumes with their weights: 1 adds, -1 subtracts. [L] and [–]
 * @returns The sum with its parts. [L]
 * @source JCGM 100:2008 (Guide to the expression of uncertainty in measurement), section 5.2: correlated inputs.
 */
export function combined(terms: readonly (readonly [number, UncertainLitres])[]): UncertainLitres {
  const [[weight, first] = [0, exactly(0)], ...others] = terms;
  const whole = weight === 1 ? first : { litres: weight * first.litres, parts: scaled(first.parts, weight) };
  if (others.length === 0) return whole;
  // A copy is much sooner made than a map filled key by key.
  const parts = new Map(whole.parts);
  let litres = whole.litres;
  for (const [factor, term] of others) {
    litres += factor * term.litres;
    for (const [key, part] of term.parts) parts.set(key, (parts.get(key) ?? 0) + factor * part);
  }
  return { litres, parts };
}

function scaled(parts: ReadonlyMap<string, number>, weight: number): ReadonlyMap<string, number> {
  const all = new Map<string, number>();
  for (const [key, part] of parts) all.set(key, weight * part);
  return all;
}

/**
 * Standard deviation of an uncertain volume: the root of the sum of its parts' squares, the inputs being independent of each other.
 *
 * @param volume - The volume with its parts. [L]
 * @returns Standard deviation. [L]
 * @source JCGM 100:2008, Eq. 10.
 */
export function standardDeviation(volume: UncertainLitres): number {
  let variance = 0;
  for (const part of volume.parts.values()) variance += part * part;
  return Math.sqrt(variance);
}
