import { DomainError } from '@rillbook/units/domain-error.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/** Soil, surface and roots of a zone, as the dual coefficient balance asks. */
export type DualZone = {
  /** Total evaporable water of the surface layer, TEW. [mm] */
  readonly totalEvaporableWater: Quantity<'mm'>;
  /** Readily evaporable water, REW. [mm] */
  readonly readilyEvaporableWater: Quantity<'mm'>;
  /** Available water-holding capacity of the soil, AW. [mm/m] */
  readonly availableWater: Quantity<'mm/m'>;
  /** Depletion fraction of the table, p, which is adjusted to each day's evapotranspiration. [–] */
  readonly tableFraction: number;
  /** Share of the ground under organic mulch; 0 on bare soil. [–] */
  readonly mulchCover: number;
  /** Curve number of soil and cover, or null where nothing runs off. [–] */
  readonly curveNumber: number | null;
  /** Rise from groundwater, CR; commonly 0. [mm/d] */
  readonly capillaryRise: Quantity<'mm'>;
};

/** The water in a zone between two days. */
export type DualState = {
  /** Water missing in the surface layer, De. [mm] */
  readonly surfaceDepletion: Quantity<'mm'>;
  /** Water missing in the root zone, Dr. [mm] */
  readonly depletion: Quantity<'mm'>;
  /** Share of the ground that was wetted last, fw. [–] */
  readonly wettedFraction: number;
};

/**
 * Looks at a zone and its start before the days run.
 *
 * @param zone - Soil, surface and roots. [mm]
 * @param start - The water in it before the first day. [mm]
 * @returns The same zone, looked at. [mm]
 * @throws {DomainError} `DUAL_ZONE_OUT_OF_DOMAIN` when a store, a share or the start cannot be.
 * @source Limits of Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 74, 78, 83 and 86.
 */
export function believedDualZone(zone: DualZone, start: DualState): DualZone {
  const { totalEvaporableWater, readilyEvaporableWater, availableWater, tableFraction, mulchCover, capillaryRise } = zone;
  const { surfaceDepletion, depletion, wettedFraction } = start;
  const good = [
    0 <= readilyEvaporableWater && readilyEvaporableWater < totalEvaporableWater,
    availableWater > 0 && tableFraction >= 0 && tableFraction <= 1,
    mulchCover >= 0 && mulchCover <= 1 && capillaryRise >= 0,
    0 <= surfaceDepletion && surfaceDepletion <= totalEvaporableWater && depletion >= 0,
    wettedFraction > 0 && wettedFraction <= 1,
    Number.isFinite(totalEvaporableWater + availableWater + capillaryRise + depletion),
  ];
  if (good.includes(false)) throw new DomainError('DUAL_ZONE_OUT_OF_DOMAIN', { ...zone, ...start });
  return zone;
}
