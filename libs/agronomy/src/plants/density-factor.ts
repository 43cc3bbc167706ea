import { DomainError } from '@rillbook/units/domain-error.js';

/** Density factor where none is stated: an ordinary full cover (Costello et al. 2000). */
const ORDINARY_DENSITY = 1;

/** Highest density factor that is believed; the guide's table ends at 1.3. [–] */
export const HIGHEST_DENSITY = 1.5;

/**
 * Density factor, kd: how much more or less leaf there is than in an ordinary full cover (Costello et al., landscape coefficient method).
 *
 * Sparse planting 0.5 to 0.9, ordinary 1.0, dense planting in layers 1.1 to 1.3.
 *
 * @param stated - The factor that somebody stated, or null. [–]
 * @returns The factor; 1 where none is stated. [–]
 * @throws {DomainError} `DENSITY_FACTOR_OUT_OF_DOMAIN` when stated and not above 0 and up to 1.5.
 * @source Costello, Matheny, Clark and Jones (2000), A Guide to Estimating Irrigation Water Needs of Landscape Plantings in California.
 */
export function densityFactor(stated: number | null): number {
  if (stated === null) return ORDINARY_DENSITY;
  if (!(stated > 0 && stated <= HIGHEST_DENSITY)) throw new DomainError('DENSITY_FACTOR_OUT_OF_DOMAIN', { densityFactor: stated });
  return stated;
}
