import { millimetres } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/** What comes into the root zone and leaves it in one day. */
export type RootZoneFluxes = {
  /** Rain, P. [mm] */
  readonly rain: Quantity<'mm'>;
  /** Rain that ran off, RO. [mm] */
  readonly runoff: Quantity<'mm'>;
  /** Irrigation that entered the soil, I. [mm] */
  readonly irrigation: Quantity<'mm'>;
  /** Rise from groundwater, CR. [mm] */
  readonly capillaryRise: Quantity<'mm'>;
  /** Evapotranspiration as it happened, stress included, ETc. [mm] */
  readonly etc: Quantity<'mm'>;
};

/** The root zone at the end of a day. */
export type RootZoneBalance = {
  /** Depletion at the end of the day, Dr. [mm] */
  readonly depletion: Quantity<'mm'>;
  /** Water that went below the roots, DP. [mm] */
  readonly deepPercolation: Quantity<'mm'>;
  /** Evapotranspiration asked of a root zone that was already empty: what the limit TAW leaves out of the sum. [mm] */
  readonly shortfall: Quantity<'mm'>;
};

/**
 * Daily water balance of the root zone (FAO-56, Eq. 85, 86 and 88).
 *
 * DP = max(0, (P - RO) + I + CR - ETc - Dr(start));
 * Dr = Dr(start) - (P - RO) - I - CR + ETc + DP, within 0 … TAW. The paper has no CR in Eq. 88, since none rises into a wet root zone; with it
 * no water is lost: Dr(end) = Dr(start) - (P - RO) - I - CR + ETc + DP - shortfall, always.
 *
 * @param depletion - Depletion at the start of the day. [mm]
 * @param fluxes - What came and went. [mm]
 * @param totalAvailableWater - Total available water, TAW. [mm]
 * @returns Depletion at the end of the day, what drained, and what was asked of an empty root zone. [mm]
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 85, 86 and 88.
 * @example 61.0 after the first day of FAO-56 Example 37: depletion 55, ETc 6, no rain
 */
export function rootZoneBalance(depletion: Quantity<'mm'>, fluxes: RootZoneFluxes, totalAvailableWater: Quantity<'mm'>): RootZoneBalance {
  // One difference, not two: a root zone that drains ends exactly full, and the water of the day is not rounded twice.
  const end = depletion + fluxes.etc - (fluxes.rain - fluxes.runoff + fluxes.irrigation + fluxes.capillaryRise);
  return {
    depletion: millimetres(Math.min(totalAvailableWater, Math.max(0, end))),
    deepPercolation: millimetres(Math.max(0, -end)),
    shortfall: millimetres(Math.max(0, end - totalAvailableWater)),
  };
}
