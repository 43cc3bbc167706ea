import { DomainError } from '@rillbook/units/domain-error.js';
import { millimetres } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { totalAvailableWaterOfSoil } from '../root-zone/total-available-water.js';
import { consecutiveDates } from './consecutive-dates.js';
import { type IrrigationEvent, irrigationByDate } from './irrigation-event.js';
import { type MonthSums, monthSums, sumsOf } from './month-sums.js';
import { type SeasonDay, type SeasonInput, type SeasonZone, seasonDay } from './season-day.js';

/** Terms that add up over days. */
const SUMMED = [
  'eto',
  'rain',
  'irrigation',
  'etc',
  'evapotranspiration',
  'runoff',
  'rainBesideRoots',
  'capillaryRise',
  'deepPercolation',
  'shortfall',
] as const;

/** Name of a term that adds up over days. */
export type SeasonTerm = (typeof SUMMED)[number];

/** A zone over consecutive days, as it really was watered. */
export type Season = {
  /** Weather and coefficient by day, one after the other. [mm] */
  readonly days: readonly ({ readonly date: string } & Omit<SeasonInput, 'irrigation'>)[];
  /** Irrigation that happened. [mm] */
  readonly events: readonly IrrigationEvent[];
  /** Soil and roots. [mm] */
  readonly zone: SeasonZone;
  /** Water missing in the root zone before the first day, Dr. [mm] */
  readonly depletion: Quantity<'mm'>;
};

/** What became of the water. */
export type SeasonBalance = {
  /** Every term by day. [mm] */
  readonly days: readonly ({ readonly date: string; readonly capillaryRise: Quantity<'mm'> } & SeasonInput & SeasonDay)[];
  /** Sums by calendar month. [mm] */
  readonly months: readonly MonthSums<SeasonTerm>[];
  /** Sums over all days. [mm] */
  readonly total: Readonly<Record<SeasonTerm, number>>;
};

/**
 * Water balance of a zone's root zone over a season with one coefficient: rain, runoff, irrigation as it happened, stress, drainage.
 *
 * With the sums: Dr(end) = Dr(start) - (P - RO - beside) - I - CR + ETa + DP - shortfall.
 *
 * @param season - Days, irrigation, zone and start. [mm]
 * @returns Every day, the months and the sum. [mm]
 * @throws {DomainError} `SEASON_OUT_OF_DOMAIN` when zone, start or a day's value cannot be; `SEASON_DATES_OUT_OF_ORDER`;
 * `IRRIGATION_EVENT_OUT_OF_DOMAIN`; `CURVE_NUMBER_OUT_OF_DOMAIN`.
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, chapter 8.
 */
export function seasonBalance(season: Season): SeasonBalance {
  refuseUnbelieved(season);
  const { zone } = season;
  const events = irrigationByDate(season.events, consecutiveDates(season.days));
  let { depletion } = season;
  const days = season.days.map((day) => {
    const irrigation = millimetres(events.get(day.date)?.irrigation ?? 0);
    const input = Object.assign({ irrigation, capillaryRise: zone.capillaryRise }, day);
    const terms = seasonDay(depletion, input, zone);
    depletion = terms.depletion;
    return Object.assign(input, terms);
  });
  return { days, months: monthSums(days, SUMMED), total: sumsOf(days, SUMMED) };
}

function refuseUnbelieved({ days, zone, depletion }: Season): void {
  const { availableWater, rootDepth, rootedFraction, tableFraction, capillaryRise } = zone;
  const hasRoots = Math.min(availableWater, rootDepth, rootedFraction) > 0;
  const holds = hasRoots ? rootedFraction * totalAvailableWaterOfSoil(availableWater, rootDepth) : 0;
  const believed = [
    hasRoots,
    Math.min(tableFraction, capillaryRise, depletion) >= 0,
    Math.max(rootedFraction, tableFraction) <= 1,
    Number.isFinite(holds + capillaryRise),
    depletion <= holds,
  ];
  if (believed.includes(false)) throw new DomainError('SEASON_OUT_OF_DOMAIN', { ...zone, depletion });
  for (const { date, eto, rain, plantCoefficient } of days) {
    const least = Math.min(eto, rain, plantCoefficient);
    if (!(least >= 0 && Number.isFinite(eto + rain + plantCoefficient))) {
      throw new DomainError('SEASON_OUT_OF_DOMAIN', { date, eto, rain, plantCoefficient });
    }
  }
}
