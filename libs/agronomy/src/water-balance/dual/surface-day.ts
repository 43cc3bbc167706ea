import { millimetres } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { mulchedEvaporation } from '../../soil/cover/mulch.js';
import type { CanopyDay } from '../canopy/canopy-day.js';
import { curveNumberRunoff } from '../rain/curve-number-runoff.js';
import { evaporationCoefficient } from '../surface/evaporation-coefficient.js';
import { evaporationReduction } from '../surface/evaporation-reduction.js';
import { exposedWettedFraction } from '../surface/exposed-wetted-fraction.js';
import { surfaceBalance } from '../surface/surface-balance.js';
import { wettedFraction } from '../surface/wetted-fraction.js';
import type { DualState, DualZone } from './dual-zone.js';

/** What a day brings to a zone. */
export type DualInput = {
  /** Reference evapotranspiration, ETo. [mm] */
  readonly eto: Quantity<'mm'>;
  /** Rain, P. [mm] */
  readonly rain: Quantity<'mm'>;
  /** Irrigation over the zone's whole area, I. [mm] */
  readonly irrigation: Quantity<'mm'>;
  /** Share of the ground that this irrigation wets. [–] */
  readonly irrigatedFraction: number;
  /** Plants and air. [–] */
  readonly canopy: CanopyDay;
};

/** The surface layer of a day, every term of it. */
export type SurfaceDay = {
  /** Share of the ground that was wetted last, fw. [–] */
  readonly wettedFraction: number;
  /** Exposed and wetted soil fraction, few. [–] */
  readonly exposedWettedFraction: number;
  /** Evaporation reduction coefficient, Kr. [–] */
  readonly evaporationReduction: number;
  /** Soil evaporation coefficient, Ke. [–] */
  readonly evaporationCoefficient: number;
  /** Evaporation, E. [mm] */
  readonly evaporation: Quantity<'mm'>;
  /** Rain that ran off, RO. [mm] */
  readonly runoff: Quantity<'mm'>;
  /** Water that went below the surface layer, DPe. [mm] */
  readonly surfacePercolation: Quantity<'mm'>;
  /** Water missing in the surface layer at the end, De. [mm] */
  readonly surfaceDepletion: Quantity<'mm'>;
};

/**
 * The surface layer over a day: how wet it is, what evaporates, what runs off and drains (FAO-56, chapter 7).
 *
 * The day's water comes after its evaporation: Kr is told from the layer at the end of the day before.
 *
 * @param state - The water before the day. [mm]
 * @param input - What the day brings. [mm]
 * @param zone - Soil and surface. [mm]
 * @returns Every term of the surface layer. [mm]
 * @throws {DomainError} The codes of the single equations, when an input cannot be.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 71 to 79; chapter 11 for the mulch.
 */
export function surfaceDay(state: DualState, input: DualInput, zone: DualZone): SurfaceDay {
  const { eto, rain, irrigation, canopy } = input;
  const wetted = wettedFraction(state.wettedFraction, input);
  const exposed = exposedWettedFraction(canopy.canopyCover, wetted);
  const reduction = evaporationReduction(state.surfaceDepletion, zone.totalEvaporableWater, zone.readilyEvaporableWater);
  const { basalCoefficient, maximumCoefficient } = canopy;
  const limits = { basalCoefficient, maximumCoefficient, exposedWettedFraction: exposed };
  const coefficient = mulchedEvaporation(evaporationCoefficient(reduction, limits), zone.mulchCover);
  const evaporation = millimetres(coefficient * eto);
  const runoff = zone.curveNumber === null ? millimetres(0) : curveNumberRunoff(rain, zone.curveNumber);
  const infiltratedRain = millimetres(rain - runoff);
  const fluxes = { infiltratedRain, irrigation, evaporation, wettedFraction: wetted, exposedWettedFraction: exposed };
  return {
    wettedFraction: wetted,
    exposedWettedFraction: exposed,
    evaporationReduction: reduction,
    evaporationCoefficient: coefficient,
    evaporation,
    runoff,
    ...surfaceBalance(state.surfaceDepletion, fluxes, zone.totalEvaporableWater),
  };
}
