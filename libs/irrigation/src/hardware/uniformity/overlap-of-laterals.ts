import { DomainError } from '@rillbook/units/domain-error.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/** Nobody sets more cans between two laterals than this; a spacing that asks for more was mistyped. An assumption. */
const MOST_PLACES = 1000;

/** A ratio of spacings this near to a whole number is one. */
const ALMOST_WHOLE = 1e-6;

/**
 * Catch between two laterals, from a test of one: what falls right of one lateral and left of the next adds up.
 *
 * x(i) = left(i) + right(n + 1 − i), n = lateral spacing / can spacing, i counted from the lateral; a throw beyond the next lateral is added
 * where it falls.
 *
 * @param left - Catch of the cans left of the lateral, the nearest first. [any]
 * @param right - Catch of the cans right of the lateral, the nearest first, in the same unit. [any]
 * @param lateralSpacing - Distance between laterals. [m]
 * @param canSpacing - Distance between cans. [m]
 * @returns Catch at each place between two laterals, in the order of `left`. [any]
 * @throws {DomainError} `OVERLAP_OUT_OF_DOMAIN` when the cans do not divide the spacing of laterals into 1 … 1000 places, or a catch is below zero or not finite.
 * @source A university's open library of sprinkler evaluation, overlap of laterals.
 * @example laterals 50 ft, cans 10 ft: left .28 .24 .21 .10, right .23 .21 .30 gives .28 .24 .51 .31 .23
 */
export function overlapOfLaterals(
  left: readonly number[],
  right: readonly number[],
  lateralSpacing: Quantity<'m'>,
  canSpacing: Quantity<'m'>,
): readonly number[] {
  const places = Math.round(lateralSpacing / canSpacing);
  const divides = places >= 1 && places <= MOST_PLACES && canSpacing > 0 && Math.abs(lateralSpacing / canSpacing - places) <= ALMOST_WHOLE;
  if (!divides || ![...left, ...right].every((each) => each >= 0 && Number.isFinite(each))) {
    throw new DomainError('OVERLAP_OUT_OF_DOMAIN', { left, right, lateralSpacing, canSpacing });
  }
  const catches = new Array<number>(places).fill(0);
  const add = (place: number, caught: number) => {
    catches[place] = (catches[place] ?? 0) + caught;
  };
  left.forEach((caught, at) => add(at % places, caught));
  right.forEach((caught, at) => add(places - 1 - (at % places), caught));
  return catches;
}
