import { DomainError } from '@rillbook/units/domain-error.js';
import { millimetresFromInches } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/** What organic mulch over the whole ground takes from the evaporation of bare soil: 5 % for each 10 % of cover. */
const CUT_BY_FULL_COVER = 0.5;

/** Usual depth of mulch in planted beds and around trees. [in] */
const SHALLOWEST_INCHES = 2;
const DEEPEST_INCHES = 4;

/**
 * Soil evaporation coefficient under organic mulch, Ke (FAO-56, chapter 11).
 *
 * Ke(mulched) = Ke · (1 − 0.5 · cover): about 5 % less for each 10 % of the ground that is covered
 *
 * @param evaporationCoefficient - Coefficient of bare soil, Ke. [–]
 * @param mulchCover - Share of the ground under mulch. [–]
 * @returns The coefficient under mulch. [–]
 * @throws {DomainError} `MULCH_OUT_OF_DOMAIN` when the coefficient is below 0 or not finite, or the cover not within 0 … 1.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, chapter 11; from memory.
 */
export function mulchedEvaporation(evaporationCoefficient: number, mulchCover: number): number {
  if (!(evaporationCoefficient >= 0 && evaporationCoefficient < Infinity && mulchCover >= 0 && mulchCover <= 1)) {
    throw new DomainError('MULCH_OUT_OF_DOMAIN', { evaporationCoefficient, mulchCover });
  }
  return evaporationCoefficient * (1 - CUT_BY_FULL_COVER * mulchCover);
}

/**
 * Depth of mulch that is usual in planted beds and around trees.
 *
 * @returns Shallowest and deepest layer. [mm]
 * @source Texas A&M AgriLife Extension.
 */
export function usualMulchDepth(): { readonly low: Quantity<'mm'>; readonly high: Quantity<'mm'> } {
  return { low: millimetresFromInches(SHALLOWEST_INCHES), high: millimetresFromInches(DEEPEST_INCHES) };
}
