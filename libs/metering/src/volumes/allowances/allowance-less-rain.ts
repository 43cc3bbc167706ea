import { DomainError } from '@rillbook/units/domain-error.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { ordinanceAllowance, type OrdinanceArea } from '../ordinance-allowance.js';

/** Share of the year's rain that may be counted as effective. */
const LARGEST_EFFECTIVE_SHARE = 0.25;

/**
 * Most rain of a year that the ordinance lets a designer count, Eppt.
 *
 * Eppt = 0.25 · annual rain
 *
 * @param annualRain - Normal rain of a year. [mm]
 * @returns Effective rain, at most. [mm]
 * @throws {DomainError} `RAIN_OUT_OF_DOMAIN` when below 0 or not finite.
 * @source 23 CCR 492.4, effective precipitation option, as printed in Vacaville's municipal code.
 */
export function effectiveRainAtMost(annualRain: Quantity<'mm'>): Quantity<'mm'> {
  if (!(annualRain >= 0 && annualRain < Infinity)) throw new DomainError('RAIN_OUT_OF_DOMAIN', { annualRain });
  return (LARGEST_EFFECTIVE_SHARE * annualRain) as Quantity<'mm'>;
}

/**
 * Yearly allowance with the optional effective rain taken off, never below nothing.
 *
 * MAWA = (ETo − Eppt) · 0.62 · (ETAF · LA + (1 − ETAF) · SLA)
 *
 * @param referenceEvapotranspiration - Yearly reference evapotranspiration. [mm]
 * @param annualRain - Normal rain of a year; a quarter of it is taken off. [mm]
 * @param area - Adjustment factor, irrigated area LA and special landscape area SLA. [m2]
 * @returns Allowed volume of a year. [L]
 * @throws {DomainError} `RAIN_OUT_OF_DOMAIN` and `ORDINANCE_OUT_OF_DOMAIN` when a value cannot be.
 * @source 23 CCR 492.4, effective precipitation option, as printed in Vacaville's municipal code.
 */
export function ordinanceAllowanceLessRain(
  referenceEvapotranspiration: Quantity<'mm'>,
  annualRain: Quantity<'mm'>,
  area: OrdinanceArea,
): Quantity<'L'> {
  const left = Math.max(0, referenceEvapotranspiration - effectiveRainAtMost(annualRain)) as Quantity<'mm'>;
  return ordinanceAllowance(left, area);
}
