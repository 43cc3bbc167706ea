import { DomainError } from '@rillbook/units/domain-error.js';
import { finiteQuantity, type Quantity } from '@rillbook/units/quantity.js';

/** Heads, nozzles or emitters of one kind in a zone. */
export interface HeadsOfOneFlow {
  readonly count: number;
  readonly flow: Quantity<'L/min'>;
}

/**
 * Flow of a zone from its heads, nozzles or emitters.
 *
 * Q = Σ count · q
 *
 * @param heads - Number and flow of each kind, at the pressure that the zone has. [L/min]
 * @returns Flow of the zone. [L/min]
 * @throws {DomainError} `HEADS_OUT_OF_DOMAIN` when a count is not a whole number, or a count or flow is below zero or not finite.
 * @source Conservation of water.
 * @example 6 heads of 1.0 gpm and 4 of 0.5 gpm // 30.3 L/min, 8 gpm
 */
export function flowOfHeads(heads: readonly HeadsOfOneFlow[]): Quantity<'L/min'> {
  if (!heads.every(({ count, flow }) => Number.isInteger(count) && count >= 0 && flow >= 0))
    throw new DomainError('HEADS_OUT_OF_DOMAIN', { heads });
  return finiteQuantity(
    heads.reduce((sum, { count, flow }) => sum + count * flow, 0),
    'HEADS_OUT_OF_DOMAIN',
  );
}
