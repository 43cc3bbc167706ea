import { DomainError } from '@rillbook/units/domain-error.js';
import { millimetres } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/** What wets and dries the surface layer on a day, over the zone's whole area. */
export type SurfaceFluxes = {
  /** Rain that did not run off, P - RO. [mm] */
  readonly infiltratedRain: Quantity<'mm'>;
  /** Irrigation, I. [mm] */
  readonly irrigation: Quantity<'mm'>;
  /** Evaporation, E. [mm] */
  readonly evaporation: Quantity<'mm'>;
  /** Share of the ground that was wetted last, fw. [–] */
  readonly wettedFraction: number;
  /** Exposed and wetted soil fraction, few. [–] */
  readonly exposedWettedFraction: number;
};

/** The surface layer at the end of a day, as a depth over its wetted part. */
export type SurfaceBalance = {
  /** Water missing in the layer, De. [mm] */
  readonly surfaceDepletion: Quantity<'mm'>;
  /** Water that went below the layer, DPe. [mm] */
  readonly surfacePercolation: Quantity<'mm'>;
};

/**
 * Daily water balance of the surface layer (FAO-56, Eq. 77 to 79).
 *
 * DPe = max(0, (P - RO) + I/fw - De(start));
 * De = De(start) - (P - RO) - I/fw + E/few + DPe, within 0 … TEW. What plants take from this layer (Tew) is neglected, as the paper allows.
 *
 * @param surfaceDepletion - Water missing at the end of the day before, De. [mm]
 * @param fluxes - What came and went. [mm]
 * @param totalEvaporableWater - Total evaporable water, TEW. [mm]
 * @returns Water missing at the end of the day, and what drained below the layer. [mm]
 * @throws {DomainError} `GROUND_FRACTION_OUT_OF_DOMAIN` when a share is not above 0 and up to 1.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 77, 78 and 79.
 * @example 0 missing and 46.0 below, from 20.0 missing and 33 of irrigation on half of the ground
 */
export function surfaceBalance(
  surfaceDepletion: Quantity<'mm'>,
  fluxes: SurfaceFluxes,
  totalEvaporableWater: Quantity<'mm'>,
): SurfaceBalance {
  const { infiltratedRain, irrigation, evaporation, wettedFraction, exposedWettedFraction } = fluxes;
  if (!(wettedFraction > 0 && wettedFraction <= 1 && exposedWettedFraction > 0 && exposedWettedFraction <= 1))
    throw new DomainError('GROUND_FRACTION_OUT_OF_DOMAIN', { wettedFraction, exposedWettedFraction });
  const water = infiltratedRain + (irrigation > 0 ? irrigation / wettedFraction : 0);
  const percolation = Math.max(0, water - surfaceDepletion);
  const end = surfaceDepletion - water + evaporation / exposedWettedFraction + percolation;
  return {
    surfaceDepletion: millimetres(Math.min(totalEvaporableWater, Math.max(0, end))),
    surfacePercolation: millimetres(percolation),
  };
}
