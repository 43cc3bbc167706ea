import { millimetres } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/** Sums of what came into a root zone and left it over a season. */
export type SeasonFluxes = {
  /** Rain, P. [mm] */
  readonly rain: Quantity<'mm'>;
  /** Rain that ran off, RO. [mm] */
  readonly runoff: Quantity<'mm'>;
  /** Irrigation, I. [mm] */
  readonly irrigation: Quantity<'mm'>;
  /** Rise from groundwater, CR. [mm] */
  readonly capillaryRise: Quantity<'mm'>;
  /** Evapotranspiration as it happened. [mm] */
  readonly evapotranspiration: Quantity<'mm'>;
  /** Water that went below the roots, DP. [mm] */
  readonly deepPercolation: Quantity<'mm'>;
};

/**
 * Depletion with which a season must close if no water is lost (FAO-56, Eq. 85 summed over days).
 *
 * Dr(end) = Dr(start) - (P - RO) - I - CR + ETa + DP
 *
 * @param depletion - Water missing in the root zone before the first day. [mm]
 * @param sums - Sums of the season. [mm]
 * @returns Water missing after the last day. [mm]
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 85.
 */
export function closingDepletion(depletion: Quantity<'mm'>, sums: SeasonFluxes): Quantity<'mm'> {
  const gained = sums.rain - sums.runoff + sums.irrigation + sums.capillaryRise;
  return millimetres(depletion - gained + sums.evapotranspiration + sums.deepPercolation);
}
