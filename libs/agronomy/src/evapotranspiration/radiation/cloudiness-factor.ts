import { DomainError } from '@rillbook/units/domain-error.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import type { RadiationUnit } from './radiation-unit.js';

/** Lowest ratio of solar to clear-sky radiation that the fit holds for (ASCE-EWRI 2005, below Eq. 18). */
export const LOWEST_RATIO = 0.3;

/** Ratio taken where the sun does not rise at all, so that there is none to compute: a sky half covered. An assumption. */
export const RATIO_WITHOUT_SUN = 0.7;

/**
 * Cloudiness factor of the long-wave exchange, fcd (ASCE-EWRI, Eq. 18; the last factor of FAO-56, Eq. 39).
 *
 * fcd = 1.35·Rs/Rso - 0.35, Rs/Rso limited to 0.3 … 1.0
 *
 * @param solarRadiation - Solar radiation measured. [MJ/m2/d or MJ/m2/h]
 * @param clearSkyRadiation - Solar radiation under a clear sky in the same time. [MJ/m2/d or MJ/m2/h]
 * @returns 1 under a clear sky, 0.055 under the darkest. [–]
 * @throws {DomainError} `RADIATION_OUT_OF_DOMAIN` when one of the two is below 0.
 * @source ASCE-EWRI (2005), Eq. 18; Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 39, which has no lower limit.
 */
export function cloudinessFactor<Unit extends RadiationUnit>(
  solarRadiation: Quantity<Unit>,
  clearSkyRadiation: Quantity<NoInfer<Unit>>,
): number {
  if (!(solarRadiation >= 0 && clearSkyRadiation >= 0))
    throw new DomainError('RADIATION_OUT_OF_DOMAIN', { solarRadiation, clearSkyRadiation });
  const ratio = clearSkyRadiation > 0 ? solarRadiation / clearSkyRadiation : RATIO_WITHOUT_SUN;
  return 1.35 * Math.min(1, Math.max(LOWEST_RATIO, ratio)) - 0.35;
}
