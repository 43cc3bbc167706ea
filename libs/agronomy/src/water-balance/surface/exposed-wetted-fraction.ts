import { DomainError } from '@rillbook/units/domain-error.js';

/** Least share that is exposed and wetted: where plants cover all, 0.01 is left for the sum to stay stable (FAO-56, below Eq. 75). */
const LEAST_EXPOSED = 0.01;

/**
 * Exposed and wetted soil fraction, few (FAO-56, Eq. 75).
 *
 * few = min(1 - fc, fw), within 0.01 … 1
 *
 * @param canopyCover - Share of the ground that plants shade, fc. [–]
 * @param wettedFraction - Share of the ground that rain or irrigation wetted last, fw. [–]
 * @returns Share of the ground from which most evaporation comes. [–]
 * @throws {DomainError} `GROUND_FRACTION_OUT_OF_DOMAIN` when a share is not within 0 … 1.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 75 and the limits below it.
 * @example exposedWettedFraction(0.2, 0.5) // 0.5
 */
export function exposedWettedFraction(canopyCover: number, wettedFraction: number): number {
  if (!(canopyCover >= 0 && canopyCover <= 1 && wettedFraction >= 0 && wettedFraction <= 1)) {
    throw new DomainError('GROUND_FRACTION_OUT_OF_DOMAIN', { canopyCover, wettedFraction });
  }
  return Math.max(LEAST_EXPOSED, Math.min(1 - canopyCover, wettedFraction));
}
