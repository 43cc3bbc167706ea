import { DomainError } from '@rillbook/units/domain-error.js';
import { finiteQuantity, type Quantity } from '@rillbook/units/quantity.js';

/**
 * Litres in a drop, as public figures imply. They differ by more than two times, so a flow of drops is a range.
 *
 * Least: 30 drops a minute are 54 gal a month (town of Webster, Massachusetts). Likely: a quarter of a millilitre, 15,140 drops a gallon (a
 * federal drip calculator, from memory). Most: a drop a second is more than 3,000 gal a year (Powder Springs, Georgia, quoting the EPA).
 */
const LITRES_PER_DROP = { least: 0.000156, likely: 0.00025, most: 0.000365 } as const;

/** A flow that is only known within a range. */
export interface DripFlow {
  readonly least: Quantity<'L/min'>;
  readonly likely: Quantity<'L/min'>;
  readonly most: Quantity<'L/min'>;
}

/**
 * Flow of counted drops, as a range: the size of a drop is not known.
 *
 * Q = drops · V(drop)
 *
 * @param dropsPerMinute - Drops counted in a minute. [1/min]
 * @returns Least, likely and most flow. [L/min]
 * @throws {DomainError} `DROPS_OUT_OF_DOMAIN` when below zero or not finite.
 * @source Drop sizes implied by charts of public water suppliers; see `LITRES_PER_DROP`.
 * @example dripFlow(30) // 54 gal a month at least
 */
export function dripFlow(dropsPerMinute: number): DripFlow {
  if (!(dropsPerMinute >= 0)) throw new DomainError('DROPS_OUT_OF_DOMAIN', { dropsPerMinute });
  const of = (litresPerDrop: number) => finiteQuantity<'L/min'>(dropsPerMinute * litresPerDrop, 'DROPS_OUT_OF_DOMAIN');
  return { least: of(LITRES_PER_DROP.least), likely: of(LITRES_PER_DROP.likely), most: of(LITRES_PER_DROP.most) };
}
