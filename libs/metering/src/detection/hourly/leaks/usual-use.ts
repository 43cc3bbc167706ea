import type { ObservedMeter } from '../steps/observed-meter.js';

/** Days of a usual month. */
const MONTH_DAYS = 28;
/** The newest days do not count: they may be what is judged. */
const NEWEST_DAYS = 2;
/** Out of season, this share of the highest month so far counts as usual. Common practice, no source. */
const SEASON_SHARE = 0.25;
const LEAST_DAYS = 7;
/** Nor is a usual day taken for less than this share of a watering of ten minutes by every zone. Common practice, no source. */
const WATERING_SHARE = 0.2;
const WATERING_MINUTES = 10;
/** So many days say what a year's are like: less may lack a season. */
const YEAR_DAYS = 300;

/** Litres of a usual day, as the days go by: of late, and of all days so far, which is infinite before there is a year of them. */
export interface UsualUse {
  highest: number;
  litres: number;
  days: number;
  ofLate: number;
  ofYear: number;
}

/**
 * Nothing known yet.
 *
 * @returns No day. [–]
 */
export function noUsualUse(): UsualUse {
  return { highest: 0, litres: 0, days: 0, ofLate: Number.NaN, ofYear: Number.POSITIVE_INFINITY };
}

/**
 * Moves the litres of a usual day on by a day. Of late: the mean of the last month; a quarter of the highest month so far, or on an irrigation meter a fifth of a watering,
 * where that is more.
 *
 * @param meter - The meter. [code]
 * @param usual - What was usual until the day before, NaN while fewer than seven days are known; it is moved. [L/d]
 * @param day - The day, from 0. [–]
 */
export function moveUsualUse(meter: ObservedMeter, usual: UsualUse, day: number): void {
  const before = meter.usedLitres[day - NEWEST_DAYS - 1] ?? Number.NaN;
  if (!Number.isNaN(before)) {
    usual.litres += before;
    usual.days += 1;
  }
  usual.ofYear = usual.days >= YEAR_DAYS ? usual.litres / usual.days : Number.POSITIVE_INFINITY;
  usual.ofLate = usedOfLate(meter, usual, day);
}

function usedOfLate(meter: ObservedMeter, usual: UsualUse, day: number): number {
  const { usedLitres, flows, evidence } = meter;
  let [sum, days] = [0, 0];
  for (let past = Math.max(0, day - MONTH_DAYS - NEWEST_DAYS); past < day - NEWEST_DAYS; past++) {
    const used = usedLitres[past] ?? Number.NaN;
    if (Number.isNaN(used)) continue;
    sum += used;
    days += 1;
  }
  if (days < LEAST_DAYS) return Number.NaN;
  if (days >= MONTH_DAYS / 2) usual.highest = Math.max(usual.highest, sum / days);
  const watering = flows.reduce((all, flow) => all + (flow || 0), 0) * WATERING_MINUTES;
  const floor = evidence.kind === 'irrigation' ? WATERING_SHARE * watering : 0;
  return Math.max(sum / days, SEASON_SHARE * usual.highest, floor);
}
