import { mulchedEvaporation } from '../../soil/cover/mulch.js';
import { curveNumberRetention } from '../rain/curve-number-runoff.js';
import { believedDualZone, type DualState, type DualZone } from './dual-zone.js';

/** What comes to a zone, as arrays of one number per day. */
export type KernelWater = {
  /** Reference evapotranspiration, ETo. [mm/d] */
  readonly eto: Float64Array;
  /** Rain, P. [mm/d] */
  readonly rain: Float64Array;
  /** Irrigation over the zone's whole area, I. [mm/d] */
  readonly irrigation: Float64Array;
  /** Share of the ground that the day's irrigation wets. [–] */
  readonly irrigatedFraction: Float64Array;
};

/** A zone and its start, as the kernel takes them: plain numbers. */
export type KernelZone = {
  /** Total evaporable water, TEW. [mm] */
  readonly totalEvaporableWater: number;
  /** Readily evaporable water, REW. [mm] */
  readonly readilyEvaporableWater: number;
  /** Available water-holding capacity of the soil, AW. [mm/m] */
  readonly availableWater: number;
  /** Depletion fraction of the table, p. [–] */
  readonly tableFraction: number;
  /** What a mulch leaves of the evaporation. [–] */
  readonly mulchFactor: number;
  /** Potential retention of the ground, S; infinite where nothing runs off. [mm] */
  readonly retention: number;
  /** Rise from groundwater, CR. [mm/d] */
  readonly capillaryRise: number;
  /** Water missing in the surface layer before the first day, De. [mm] */
  readonly surfaceDepletion: number;
  /** Water missing in the root zone before the first day, Dr. [mm] */
  readonly depletion: number;
  /** Share of the ground that was wetted last before the first day, fw. [–] */
  readonly wettedFraction: number;
};

/** Where the kernel writes, one number per day, as long as the series. */
export type KernelDays = {
  /** Evaporation, E. [mm] */
  readonly evaporation: Float64Array;
  /** Transpiration, T. [mm] */
  readonly transpiration: Float64Array;
  /** Rain that ran off, RO. [mm] */
  readonly runoff: Float64Array;
  /** Water missing in the surface layer at the end, De. [mm] */
  readonly surfaceDepletion: Float64Array;
  /** Water missing in the root zone at the end, Dr. [mm] */
  readonly depletion: Float64Array;
  /** Water that went below the roots, DP. [mm] */
  readonly deepPercolation: Float64Array;
  /** Evapotranspiration asked of an empty root zone. [mm] */
  readonly shortfall: Float64Array;
};

/**
 * A zone and its start as the kernel takes them.
 *
 * @param zone - Soil, surface and roots. [mm]
 * @param start - The water in it before the first day. [mm]
 * @returns Plain numbers. [mm]
 * @throws {DomainError} `DUAL_ZONE_OUT_OF_DOMAIN` or `CURVE_NUMBER_OUT_OF_DOMAIN` when an input cannot be.
 * @source The limits of `believedDualZone`; retention by TR-55, Eq. 2-4.
 */
export function kernelZone(zone: DualZone, start: DualState): KernelZone {
  const { curveNumber, mulchCover, ...numbers } = believedDualZone(zone, start);
  const retention = curveNumber === null ? Number.POSITIVE_INFINITY : curveNumberRetention(curveNumber);
  return { ...numbers, mulchFactor: mulchedEvaporation(1, mulchCover), retention, ...start };
}

/**
 * Room for what the kernel writes; one serves any number of zones in turn.
 *
 * @param days - Number of days. [–]
 * @returns Arrays of zeros. [mm]
 * @source None: memory, no physics.
 */
export function kernelDays(days: number): KernelDays {
  const column = () => new Float64Array(days);
  return {
    evaporation: column(),
    transpiration: column(),
    runoff: column(),
    surfaceDepletion: column(),
    depletion: column(),
    deepPercolation: column(),
    shortfall: column(),
  };
}
