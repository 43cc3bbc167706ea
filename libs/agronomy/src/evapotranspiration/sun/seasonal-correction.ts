import { DomainError } from '@rillbook/units/domain-error.js';
import { finiteQuantity, type Quantity } from '@rillbook/units/quantity.js';

/**
 * Seasonal correction of solar time, Sc (ASCE-EWRI, Eq. 57 and 58; FAO-56, Eq. 32 and 33).
 *
 * Sc = 0.1645·sin 2b - 0.1255·cos b - 0.025·sin b with b = 2π·(J - 81) / 364
 *
 * @param dayOfYear - Day of the year, 1 for 1 January. [–]
 * @returns What the sundial is ahead of the mean sun. [h]
 * @throws {DomainError} `DAY_OF_YEAR_OUT_OF_DOMAIN` when not within 1 … 366.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 32 and 33; ASCE-EWRI (2005), Eq. 57 and 58, numbers from memory.
 * @example seasonalCorrection(182) // -0.0587, Fallon, Nevada, 1 July
 */
export function seasonalCorrection(dayOfYear: number): Quantity<'h'> {
  if (!(dayOfYear >= 1 && dayOfYear <= 366)) throw new DomainError('DAY_OF_YEAR_OUT_OF_DOMAIN', { dayOfYear });
  const b = (2 * Math.PI * (dayOfYear - 81)) / 364;
  return finiteQuantity(0.1645 * Math.sin(2 * b) - 0.1255 * Math.cos(b) - 0.025 * Math.sin(b), 'DAY_OF_YEAR_OUT_OF_DOMAIN');
}
