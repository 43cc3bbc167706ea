import { millimetres } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { adjustedDepletionFraction } from '../root-zone/depletion-fraction.js';
import { readilyAvailableWater } from '../root-zone/readily-available-water.js';
import { rootZoneBalance } from '../root-zone/root-zone-balance.js';
import { totalAvailableWaterOfSoil } from '../root-zone/total-available-water.js';
import { waterStressCoefficient } from '../root-zone/water-stress-coefficient.js';
import type { DualState, DualZone } from './dual-zone.js';
import { type DualInput, type SurfaceDay, surfaceDay } from './surface-day.js';

/** A day of a zone with evaporation and transpiration apart: every term. */
export type DualDay = SurfaceDay & {
  /** Evapotranspiration without stress, ETc = (Kcb + Ke)·ETo. [mm] */
  readonly etc: Quantity<'mm'>;
  /** Total available water of the day's roots, TAW. [mm] */
  readonly totalAvailableWater: Quantity<'mm'>;
  /** Depletion fraction adjusted to the day, p. [–] */
  readonly depletionFraction: number;
  /** Readily available water, RAW. [mm] */
  readonly readilyAvailableWater: Quantity<'mm'>;
  /** Water stress coefficient at the start of the day, Ks. [–] */
  readonly waterStressCoefficient: number;
  /** Transpiration, T = Ks·Kcb·ETo. [mm] */
  readonly transpiration: Quantity<'mm'>;
  /** Evaporation and transpiration together. [mm] */
  readonly evapotranspiration: Quantity<'mm'>;
  /** Water missing in the root zone at the end, Dr. [mm] */
  readonly depletion: Quantity<'mm'>;
  /** Water that went below the roots, DP. [mm] */
  readonly deepPercolation: Quantity<'mm'>;
  /** Evapotranspiration asked of an empty root zone. [mm] */
  readonly shortfall: Quantity<'mm'>;
};

/**
 * One day of the dual crop coefficient balance of surface layer and root zone (FAO-56, Eq. 69 to 88).
 *
 * ETc adj = (Ks·Kcb + Ke)·ETo. Soil that roots newly reach counts as full: TAW grows, Dr stays.
 *
 * @param state - The water before the day. [mm]
 * @param input - Weather, irrigation, plants and air of the day. [mm]
 * @param zone - Soil, surface and roots. [mm]
 * @returns Every term of the day; it is the state before the next day. [mm]
 * @throws {DomainError} The codes of the single equations, when an input cannot be.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 69 to 88.
 */
export function dualDay(state: DualState, input: DualInput, zone: DualZone): DualDay {
  const { eto, rain, irrigation, canopy } = input;
  const surface = surfaceDay(state, input, zone);
  const etc = millimetres((surface.evaporationCoefficient + canopy.basalCoefficient) * eto);
  const taw = totalAvailableWaterOfSoil(zone.availableWater, canopy.rootDepth);
  const fraction = adjustedDepletionFraction(zone.tableFraction, etc);
  const raw = readilyAvailableWater(fraction, taw);
  const stress = waterStressCoefficient(state.depletion, taw, raw);
  const transpiration = millimetres(stress * canopy.basalCoefficient * eto);
  const evapotranspiration = millimetres(surface.evaporation + transpiration);
  const { runoff } = surface;
  const fluxes = { rain, runoff, irrigation, capillaryRise: zone.capillaryRise, etc: evapotranspiration };
  // Not a literal with spreads: V8 makes those property by property, a hundred times as slow.
  const terms = {
    etc,
    totalAvailableWater: taw,
    depletionFraction: fraction,
    readilyAvailableWater: raw,
    waterStressCoefficient: stress,
    transpiration,
    evapotranspiration,
  };
  return Object.assign(terms, surface, rootZoneBalance(state.depletion, fluxes, taw));
}
