import { millimetres } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { curveNumberRunoff } from '../rain/curve-number-runoff.js';
import { countedRain } from '../rain/effective-rain.js';
import { adjustedDepletionFraction } from '../root-zone/depletion-fraction.js';
import { readilyAvailableWater } from '../root-zone/readily-available-water.js';
import { rootZoneBalance } from '../root-zone/root-zone-balance.js';
import { totalAvailableWaterOfSoil } from '../root-zone/total-available-water.js';
import { waterStressCoefficient } from '../root-zone/water-stress-coefficient.js';

/** Soil and roots of a zone, as the single coefficient balance asks. */
export type SeasonZone = {
  /** Available water-holding capacity of the soil, AW. [mm/m] */
  readonly availableWater: Quantity<'mm/m'>;
  /** Depth of the root zone, Zr. [mm] */
  readonly rootDepth: Quantity<'mm'>;
  /** Share of the zone's ground in which its roots drink: 1 where all is watered, with drip the wetted share. [–] */
  readonly rootedFraction: number;
  /** Depletion fraction, p: of the table, for 5 mm/d. [–] */
  readonly tableFraction: number;
  /** Whether p follows each day's evapotranspiration or stays. */
  readonly adjustsFraction: boolean;
  /** Curve number of soil and cover, or null where nothing runs off. [–] */
  readonly curveNumber: number | null;
  /** Rise from groundwater, CR; commonly 0. [mm/d] */
  readonly capillaryRise: Quantity<'mm'>;
};

/** What a day brings. */
export type SeasonInput = {
  /** Reference evapotranspiration, ETo. [mm] */
  readonly eto: Quantity<'mm'>;
  /** Rain, P. [mm] */
  readonly rain: Quantity<'mm'>;
  /** Irrigation over the zone's whole area, I. [mm] */
  readonly irrigation: Quantity<'mm'>;
  /** Coefficient of the plants, KL or Kc. [–] */
  readonly plantCoefficient: number;
};

/** A day of a zone with one coefficient: every term. */
export type SeasonDay = {
  /** Evapotranspiration without stress, ETc. [mm] */
  readonly etc: Quantity<'mm'>;
  /** Total available water over the zone's area, TAW. [mm] */
  readonly totalAvailableWater: Quantity<'mm'>;
  /** Readily available water, RAW. [mm] */
  readonly readilyAvailableWater: Quantity<'mm'>;
  /** Water stress coefficient at the start of the day, Ks. [–] */
  readonly waterStressCoefficient: number;
  /** Evapotranspiration as it happened, Ks·ETc. [mm] */
  readonly evapotranspiration: Quantity<'mm'>;
  /** Rain that ran off, RO. [mm] */
  readonly runoff: Quantity<'mm'>;
  /** Rain that reached no root: a trace, or beside the rooted share. [mm] */
  readonly rainBesideRoots: Quantity<'mm'>;
  /** Water missing in the root zone at the end, Dr. [mm] */
  readonly depletion: Quantity<'mm'>;
  /** Water that went below the roots, DP. [mm] */
  readonly deepPercolation: Quantity<'mm'>;
  /** Evapotranspiration asked of an empty root zone. [mm] */
  readonly shortfall: Quantity<'mm'>;
};

/**
 * One day of the single crop coefficient balance of a root zone (FAO-56, Eq. 81 to 88).
 *
 * Rain up to 0.2 ETo is a trace; the rest runs off by curve number, and what falls beside the rooted share is not counted. Depths are over the
 * zone's whole area; a root zone in a wetted share holds that share of TAW.
 *
 * @param depletion - Water missing in the root zone before the day, Dr. [mm]
 * @param input - Weather, irrigation and coefficient of the day. [mm]
 * @param zone - Soil and roots. [mm]
 * @returns Every term of the day. [mm]
 * @throws {DomainError} The codes of the single equations, when an input cannot be.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 81 to 88; wetted share of the root zone as in Keller and Bliesner (1990),
 * Sprinkle and Trickle Irrigation, from memory.
 */
export function seasonDay(depletion: Quantity<'mm'>, input: SeasonInput, zone: SeasonZone): SeasonDay {
  const { eto, rain, irrigation, plantCoefficient } = input;
  const { capillaryRise, tableFraction } = zone;
  const etc = millimetres(plantCoefficient * eto);
  const taw = millimetres(zone.rootedFraction * totalAvailableWaterOfSoil(zone.availableWater, zone.rootDepth));
  const raw = readilyAvailableWater(zone.adjustsFraction ? adjustedDepletionFraction(tableFraction, etc) : tableFraction, taw);
  const stress = waterStressCoefficient(depletion, taw, raw);
  const evapotranspiration = millimetres(stress * etc);
  const counted = countedRain(rain, eto);
  const runoff = zone.curveNumber === null ? millimetres(0) : curveNumberRunoff(counted, zone.curveNumber);
  const entered = millimetres(zone.rootedFraction * (counted - runoff));
  const fluxes = { rain: entered, runoff: millimetres(0), irrigation, capillaryRise, etc: evapotranspiration };
  // Not a literal with spreads: V8 makes those property by property, a hundred times as slow.
  const terms = {
    etc,
    totalAvailableWater: taw,
    readilyAvailableWater: raw,
    waterStressCoefficient: stress,
    evapotranspiration,
    runoff,
    rainBesideRoots: millimetres(rain - runoff - entered),
  };
  return Object.assign(terms, rootZoneBalance(depletion, fluxes, taw));
}
