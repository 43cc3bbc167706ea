import { DomainError } from '@rillbook/units/domain-error.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/** Cover is never taken as full, so that some ground stays exposed (FAO-56, below Eq. 76). */
const FULLEST_COVER = 0.99;

/** The coefficients from which a cover is told. */
export type CanopyCoefficients = {
  /** Basal crop coefficient of the day, Kcb. [–] */
  readonly basalCoefficient: number;
  /** Coefficient of dry bare soil with hardly any cover, Kcmin; 0.15 to 0.20. [–] */
  readonly minimumCoefficient: number;
  /** Highest crop coefficient that the air allows, Kcmax. [–] */
  readonly maximumCoefficient: number;
};

/**
 * Share of the ground that plants shade, fc, from their coefficient (FAO-56, Eq. 76).
 *
 * fc = ((Kcb - Kcmin) / (Kcmax - Kcmin))^(1 + 0.5·h), within 0 … 0.99
 *
 * @param coefficients - Coefficients of plants, bare soil and air. [–]
 * @param plantHeight - Height of the plants, h. [m]
 * @returns Share of the ground that is covered. [–]
 * @throws {DomainError} `CROP_COEFFICIENT_OUT_OF_DOMAIN` when a coefficient is below 0 or not finite; `PLANT_HEIGHT_OUT_OF_DOMAIN` when the height is.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 76.
 */
export function canopyCover(coefficients: CanopyCoefficients, plantHeight: Quantity<'m'>): number {
  const { basalCoefficient, minimumCoefficient, maximumCoefficient } = coefficients;
  if (![basalCoefficient, minimumCoefficient, maximumCoefficient].every((value) => value >= 0 && value < Infinity))
    throw new DomainError('CROP_COEFFICIENT_OUT_OF_DOMAIN', { basalCoefficient, minimumCoefficient, maximumCoefficient });
  if (!(plantHeight >= 0 && plantHeight < Infinity)) throw new DomainError('PLANT_HEIGHT_OUT_OF_DOMAIN', { plantHeight });
  const span = maximumCoefficient - minimumCoefficient;
  const share = span > 0 ? Math.max(0, (basalCoefficient - minimumCoefficient) / span) : 1;
  return Math.min(FULLEST_COVER, share ** (1 + 0.5 * plantHeight));
}
