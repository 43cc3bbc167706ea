import { DomainError } from '@rillbook/units/domain-error.js';
import { millimetres } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { type CanopyAir, type CanopyDay, canopyDay } from '../canopy/canopy-day.js';
import type { GrowingPlants } from '../canopy/growing-plants.js';
import { totalAvailableWaterOfSoil } from '../root-zone/total-available-water.js';
import { consecutiveDates } from '../season/consecutive-dates.js';
import { type IrrigationEvent, irrigationByDate } from '../season/irrigation-event.js';
import { type MonthSums, monthSums, sumsOf } from '../season/month-sums.js';
import { type DualDay, dualDay } from './dual-day.js';
import { believedDualZone, type DualState, type DualZone } from './dual-zone.js';

/** Terms that add up over days. */
const SUMMED = [
  'eto',
  'rain',
  'irrigation',
  'etc',
  'evaporation',
  'transpiration',
  'evapotranspiration',
  'runoff',
  'capillaryRise',
  'deepPercolation',
  'shortfall',
] as const;

/** Name of a term that adds up over days. */
export type DualTerm = (typeof SUMMED)[number];

/** A day's weather for the dual coefficients. */
type Weather = { readonly date: string; readonly eto: Quantity<'mm'>; readonly rain: Quantity<'mm'> } & CanopyAir;

/** A zone over consecutive days of its plants' season, as it really was watered. */
export type DualSeason = {
  /** Weather by day, one after the other; the first is the first day of the plants' season. [mm] */
  readonly days: readonly Weather[];
  /** Irrigation that happened. [mm] */
  readonly events: readonly IrrigationEvent[];
  /** How the plants grow. [–] */
  readonly plants: GrowingPlants;
  /** Soil, surface and roots. [mm] */
  readonly zone: DualZone;
  /** The water before the first day. [mm] */
  readonly start: DualState;
};

/** What became of the water, evaporation and transpiration apart. */
export type DualBalance = {
  /** Every term by day. [mm] */
  readonly days: readonly (Weather &
    CanopyDay &
    DualDay & { readonly irrigation: Quantity<'mm'>; readonly capillaryRise: Quantity<'mm'> })[];
  /** Sums by calendar month. [mm] */
  readonly months: readonly MonthSums<DualTerm>[];
  /** Sums over all days. [mm] */
  readonly total: Readonly<Record<DualTerm, number>>;
};

/**
 * Water balance of a zone over a season with the dual crop coefficient: what evaporates from the ground and what plants transpire.
 *
 * With the sums: Dr(end) = Dr(start) - (P - RO) - I - CR + E + T + DP - shortfall.
 *
 * @param season - Weather, irrigation, plants, zone and start. [mm]
 * @returns Every day, the months and the sum. [mm]
 * @throws {DomainError} `DUAL_ZONE_OUT_OF_DOMAIN`, `SEASON_OUT_OF_DOMAIN`, `SEASON_DATES_OUT_OF_ORDER`, `IRRIGATION_EVENT_OUT_OF_DOMAIN`, or a code
 * of the single equations, when an input cannot be.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, chapters 7 and 8.
 */
export function dualSeason(season: DualSeason): DualBalance {
  const { plants } = season;
  const zone = believedDualZone(season.zone, season.start);
  refuseRoots(season);
  const events = irrigationByDate(season.events, consecutiveDates(season.days));
  let state = season.start;
  const days = season.days.map((weather, seasonDay) => {
    refuseNegative(weather);
    const canopy = canopyDay(plants, seasonDay, weather);
    const applied = events.get(weather.date);
    const irrigation = millimetres(applied?.irrigation ?? 0);
    const { eto, rain } = weather;
    const terms = dualDay(state, { eto, rain, irrigation, irrigatedFraction: applied?.irrigatedFraction ?? 1, canopy }, zone);
    state = terms;
    // Not a literal with spreads: V8 makes those property by property, a hundred times as slow.
    return Object.assign({ irrigation, capillaryRise: zone.capillaryRise }, weather, canopy, terms);
  });
  return { days, months: monthSums(days, SUMMED), total: sumsOf(days, SUMMED) };
}

function refuseNegative({ date, eto, rain }: Weather): void {
  if (!(eto >= 0 && rain >= 0 && Number.isFinite(eto + rain))) throw new DomainError('SEASON_OUT_OF_DOMAIN', { date, eto, rain });
}

// Roots may not shrink, and the start may not miss more water than the first roots' soil holds.
function refuseRoots({ plants, zone, start }: DualSeason): void {
  const { initialRootDepth, fullRootDepth } = plants;
  const grows = 0 < initialRootDepth && initialRootDepth <= fullRootDepth;
  if (!grows || start.depletion > totalAvailableWaterOfSoil(zone.availableWater, initialRootDepth)) {
    throw new DomainError('SEASON_OUT_OF_DOMAIN', { ...plants, ...start });
  }
}
