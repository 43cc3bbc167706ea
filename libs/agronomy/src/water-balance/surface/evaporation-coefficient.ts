import { DomainError } from '@rillbook/units/domain-error.js';

/** What limits evaporation on a day besides the dryness of the surface. */
export type EvaporationLimits = {
  /** Basal crop coefficient, Kcb. [–] */
  readonly basalCoefficient: number;
  /** Highest crop coefficient that the air allows, Kcmax. [–] */
  readonly maximumCoefficient: number;
  /** Exposed and wetted soil fraction, few. [–] */
  readonly exposedWettedFraction: number;
};

/**
 * Soil evaporation coefficient, Ke (FAO-56, Eq. 71).
 *
 * Ke = min(Kr·(Kcmax - Kcb), few·Kcmax)
 *
 * @param evaporationReduction - Reduction by a dry surface, Kr. [–]
 * @param limits - Coefficients and the share of the ground that evaporates. [–]
 * @returns Evaporation over reference evapotranspiration. [–]
 * @throws {DomainError} `CROP_COEFFICIENT_OUT_OF_DOMAIN` when not 0 ≤ Kcb ≤ Kcmax; `SURFACE_LAYER_OUT_OF_DOMAIN` when Kr or few is not within 0 … 1.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 71.
 * @example evaporationCoefficient(1, { basalCoefficient: 0.3, maximumCoefficient: 1.21, exposedWettedFraction: 0.8 }) // 0.91, Example 35
 */
export function evaporationCoefficient(evaporationReduction: number, limits: EvaporationLimits): number {
  const { basalCoefficient, maximumCoefficient, exposedWettedFraction } = limits;
  if (!(basalCoefficient >= 0 && basalCoefficient <= maximumCoefficient && Number.isFinite(maximumCoefficient))) {
    throw new DomainError('CROP_COEFFICIENT_OUT_OF_DOMAIN', { basalCoefficient, maximumCoefficient });
  }
  if (!(isShare(evaporationReduction) && isShare(exposedWettedFraction))) {
    throw new DomainError('SURFACE_LAYER_OUT_OF_DOMAIN', { evaporationReduction, exposedWettedFraction });
  }
  return Math.min(evaporationReduction * (maximumCoefficient - basalCoefficient), exposedWettedFraction * maximumCoefficient);
}

const isShare = (value: number): boolean => value >= 0 && value <= 1;
