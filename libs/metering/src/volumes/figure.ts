import { combined, exactly, type UncertainLitres } from '../uncertainty/uncertain-litres.js';
import { type Absence, absence } from './absence.js';

/**
 * A volume as it is computed: its value with parts, how much of it was filled in, or the reason why it is absent. `estimate` says why a value
 * is an estimate where no record could give it.
 */
export type Figure =
  | { readonly value: UncertainLitres; readonly filledLitres: number; readonly reason: null; readonly estimate: Absence | null }
  | { readonly value: null; readonly filledLitres: 0; readonly reason: Absence; readonly estimate: null };

/**
 * A figure that is known.
 *
 * @param value - The volume with its parts. [L]
 * @param filledLitres - How much of it was filled in or estimated. [L]
 * @param estimate - Why it is an estimate; null where it follows from records. [code]
 * @returns The figure. [L]
 */
export function known(value: UncertainLitres, filledLitres = 0, estimate: Absence | null = null): Figure {
  return { value, filledLitres, reason: null, estimate };
}

/**
 * A figure that is absent.
 *
 * @param reason - Why. [code]
 * @returns The figure without a value. [code]
 */
export function absent(reason: Absence): Figure {
  return { value: null, filledLitres: 0, reason, estimate: null };
}

/**
 * Sum of figures by owner: absent where any is, with the first reason and all owners that lack a value; an estimate where any is one.
 *
 * @param figures - Figures with the id of the zone or meter that each belongs to. [L]
 * @param ownersKey - What the owners are called in the details of an absence. [code]
 * @returns The sum. [L]
 */
export function sumOfFigures(figures: readonly (readonly [string, Figure])[], ownersKey: 'zones' | 'meters'): Figure {
  const gathered = (why: 'reason' | 'estimate'): Absence | null => {
    const own = figures.filter(([, figure]) => figure[why] !== null);
    const first = own[0]?.[1][why];
    return first ? absence(first.code, { ...first.details, [ownersKey]: own.map(([owner]) => owner) }) : null;
  };
  const reason = gathered('reason');
  if (reason) return absent(reason);
  const values = figures.map(([, figure]) => figure.value ?? exactly(0));
  const filled = figures.reduce((sum, [, figure]) => sum + figure.filledLitres, 0);
  return known(combined(values.map((value) => [1, value])), filled, gathered('estimate'));
}
