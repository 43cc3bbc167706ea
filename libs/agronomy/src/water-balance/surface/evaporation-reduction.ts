import { DomainError } from '@rillbook/units/domain-error.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/**
 * Evaporation reduction coefficient, Kr (FAO-56, Eq. 74).
 *
 * Kr = (TEW - De) / (TEW - REW) where De > REW, else 1; never below 0
 *
 * @param surfaceDepletion - Water missing in the surface layer at the end of the day before, De. [mm]
 * @param totalEvaporableWater - Total evaporable water, TEW. [mm]
 * @param readilyEvaporableWater - Readily evaporable water, REW: what evaporates before the soil slows it. [mm]
 * @returns Share of the evaporation of a wet surface. [–]
 * @throws {DomainError} `SURFACE_LAYER_OUT_OF_DOMAIN` when not 0 ≤ REW ≤ TEW, or a value is not finite.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 74.
 * @example evaporationReduction(millimetres(13.98), millimetres(20), millimetres(9)) // 0.55, FAO-56 Example 34
 */
export function evaporationReduction(
  surfaceDepletion: Quantity<'mm'>,
  totalEvaporableWater: Quantity<'mm'>,
  readilyEvaporableWater: Quantity<'mm'>,
): number {
  if (
    !(
      readilyEvaporableWater >= 0 &&
      readilyEvaporableWater <= totalEvaporableWater &&
      Number.isFinite(surfaceDepletion + totalEvaporableWater)
    )
  ) {
    throw new DomainError('SURFACE_LAYER_OUT_OF_DOMAIN', { surfaceDepletion, totalEvaporableWater, readilyEvaporableWater });
  }
  if (surfaceDepletion <= readilyEvaporableWater) return 1;
  if (surfaceDepletion >= totalEvaporableWater) return 0;
  return (totalEvaporableWater - surfaceDepletion) / (totalEvaporableWater - readilyEvaporableWater);
}
