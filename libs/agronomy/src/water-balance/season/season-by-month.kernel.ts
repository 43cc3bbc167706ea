import { TRACE_RAIN_SHARE } from '../rain/effective-rain.js';

/** Consecutive days, without a gap. */
export type SeasonSeries = {
  /** Reference evapotranspiration, ETo. [mm/d], one per day */
  readonly eto: Float64Array;
  /** Rain, P. [mm/d], one per day */
  readonly rain: Float64Array;
  /** How long the zone was watered, of whatever `irrigationRate` is per. [min/d], one per day */
  readonly minutes: Float64Array;
};

/** A zone as plain numbers; the same as `SeasonZone` with p that stays and no capillary rise. */
export type SeasonRootZone = {
  /** Coefficient of the plants, KL or Kc. [–] */
  readonly plantCoefficient: number;
  /** Total available water over the zone's area, TAW. [mm] */
  readonly totalAvailableWater: number;
  /** Readily available water, RAW. [mm] */
  readonly readilyAvailableWater: number;
  /** Share of the ground in which roots drink. [–] */
  readonly rootedFraction: number;
  /** Potential retention of the ground, S; infinite where nothing runs off. [mm] */
  readonly retention: number;
  /** Irrigation that enters the soil for a minute of watering. [mm/min] */
  readonly irrigationRate: number;
  /** Water missing in the root zone before the first day, Dr. [mm] */
  readonly depletion: number;
};

/** The sums of a month, in the order in which they are written. */
export const SEASON_SUMS = [
  'etc',
  'evapotranspiration',
  'entered',
  'runoff',
  'irrigation',
  'deepPercolation',
  'shortfall',
  'stressDays',
] as const;

/**
 * Water balance of one root zone, day by day with what really watered it, as sums by month: `seasonBalance` without an object a day.
 *
 * Ks by Eq. 84; ETa = Ks·ETc; RO by curve number; DP = max(0, P + I - ETa - Dr); Dr = Dr - P - I + ETa + DP, within 0 … TAW
 *
 * @param days - Weather and watering. [mm/d] and [min/d], one per day
 * @param ends - Index after each month's last day, the first month beginning with the series. [–], one per month
 * @param zone - The zone and where it starts. [mm]
 * @param written - Written to: eight sums for each month, in the order of `SEASON_SUMS`. [mm], and days for the last
 * @returns Water missing in the root zone after the last day, Dr. [mm]
 * @source Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 81 to 88; runoff as `curveNumberRunoff`.
 */
export function seasonByMonth(days: SeasonSeries, ends: Int32Array, zone: SeasonRootZone, written: Float64Array): number {
  const { eto, rain, minutes } = days;
  const { plantCoefficient, totalAvailableWater, readilyAvailableWater, rootedFraction, irrigationRate } = zone;
  const abstraction = 0.2 * zone.retention;
  const held = 0.8 * zone.retention;
  const perStress = 1 / (totalAvailableWater - readilyAvailableWater);
  let depletion = zone.depletion;
  let day = 0;
  for (let month = 0; month < ends.length; month += 1) {
    const end = ends[month] as number;
    let etcSum = 0;
    let takenSum = 0;
    let enteredSum = 0;
    let runoffSum = 0;
    let irrigationSum = 0;
    let drainedSum = 0;
    let shortfallSum = 0;
    let stressDays = 0;
    for (; day < end; day += 1) {
      const reference = eto[day] as number;
      const fallen = rain[day] as number;
      const etc = plantCoefficient * reference;
      let taken = etc;
      if (depletion > readilyAvailableWater) {
        taken = depletion >= totalAvailableWater ? 0 : (totalAvailableWater - depletion) * perStress * etc;
        stressDays += 1;
      }
      let entered = 0;
      if (fallen > TRACE_RAIN_SHARE * reference) {
        const excess = fallen - abstraction;
        const runoff = excess > 0 ? excess * (excess / (fallen + held)) : 0;
        entered = rootedFraction * (fallen - runoff);
        runoffSum += runoff;
        enteredSum += entered;
      }
      const irrigation = (minutes[day] as number) * irrigationRate;
      const left = depletion - (entered + irrigation) + taken;
      const drained = left < 0 ? -left : 0;
      const missing = left < 0 ? 0 : left;
      const shortfall = missing > totalAvailableWater ? missing - totalAvailableWater : 0;
      depletion = missing - shortfall;
      etcSum += etc;
      takenSum += taken;
      irrigationSum += irrigation;
      drainedSum += drained;
      shortfallSum += shortfall;
    }
    // A value that is not a number spoils the day's depletion, and so this month and all after it.
    const spoilt = Number.isNaN(depletion) ? Number.NaN : 0;
    const at = 8 * month;
    written[at] = etcSum + spoilt;
    written[at + 1] = takenSum + spoilt;
    written[at + 2] = enteredSum + spoilt;
    written[at + 3] = runoffSum + spoilt;
    written[at + 4] = irrigationSum + spoilt;
    written[at + 5] = drainedSum + spoilt;
    written[at + 6] = shortfallSum + spoilt;
    written[at + 7] = stressDays + spoilt;
  }
  return depletion;
}
