import { DomainError } from '@rillbook/units/domain-error.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { megajoulesPerSquareMetreDay } from '@rillbook/units/radiation.js';
import type { DayTemperatures } from '../vapour/vapour-pressure-from-humidity.js';

/** Where a place lies: land air swings more between night and day than sea air. */
export type Situation = 'interior' | 'coast';

/** Adjustment coefficient of the temperature range, kRs (FAO-56, below Eq. 50). [1/√°C] */
const RANGE_COEFFICIENT: Readonly<Record<Situation, number>> = { interior: 0.16, coast: 0.19 };

/** The two radiations that the estimate lies under. */
export type RadiationLimits = {
  /** Radiation above the atmosphere, Ra. [MJ/m2/d] */
  readonly extraterrestrialRadiation: Quantity<'MJ/m2/d'>;
  /** Radiation of a clear day, Rso, which the estimate never exceeds. [MJ/m2/d] */
  readonly clearSkyRadiation: Quantity<'MJ/m2/d'>;
};

/**
 * Solar radiation from the day's temperature range, Rs (FAO-56, Eq. 50).
 *
 * Rs = kRs · √(Tmax - Tmin) · Ra, never above Rso
 *
 * @param temperatures - Highest and lowest temperature of the day. [°C]
 * @param radiation - Extraterrestrial and clear-sky radiation. [MJ/m2/d]
 * @param situation - Interior or coast. [code]
 * @returns Solar radiation. [MJ/m2/d]
 * @throws {DomainError} `TEMPERATURES_CONTRADICT` when the lowest exceeds the highest.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 50.
 * @example 22.3 for Tmax 26.6, Tmin 14.8, Ra 40.6 in the interior, FAO-56 Example 15
 */
export function solarRadiationFromTemperature(
  temperatures: DayTemperatures,
  radiation: RadiationLimits,
  situation: Situation,
): Quantity<'MJ/m2/d'> {
  const range = temperatures.maximumTemperature - temperatures.minimumTemperature;
  if (range < 0) throw new DomainError('TEMPERATURES_CONTRADICT', { temperatures });
  const estimate = RANGE_COEFFICIENT[situation] * Math.sqrt(range) * radiation.extraterrestrialRadiation;
  return megajoulesPerSquareMetreDay(Math.min(estimate, radiation.clearSkyRadiation));
}
