import { DomainError } from '@rillbook/units/domain-error.js';

/** Coefficients below this are not adjusted (FAO-56, Eq. 70). */
const LOWEST_ADJUSTED = 0.45;

/**
 * Basal crop coefficient of the table for another climate, Kcb (FAO-56, Eq. 70; for mid-season and late season only).
 *
 * Kcb = Kcb(table) + [0.04·(u2 - 2) - 0.004·(RHmin - 45)]·(h/3)^0.3 where Kcb(table) ≥ 0.45, else Kcb(table)
 *
 * @param tableCoefficient - Basal coefficient of the table, which holds for 2 m/s and 45 %. [–]
 * @param climateTerm - What mean wind and lowest humidity of the stage add at 3 m. [–]
 * @param heightFactor - How much of it plants of their mean height take up. [–]
 * @returns The coefficient for the climate. [–]
 * @throws {DomainError} `CROP_COEFFICIENT_OUT_OF_DOMAIN` when the coefficient is below 0, or a value is not finite.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 70.
 */
export function adjustedBasalCoefficient(tableCoefficient: number, climateTerm: number, heightFactor: number): number {
  if (!(tableCoefficient >= 0 && Number.isFinite(tableCoefficient + climateTerm + heightFactor))) {
    throw new DomainError('CROP_COEFFICIENT_OUT_OF_DOMAIN', { tableCoefficient, climateTerm, heightFactor });
  }
  return tableCoefficient >= LOWEST_ADJUSTED ? tableCoefficient + climateTerm * heightFactor : tableCoefficient;
}
