import { weekdayOfDayNumber } from '@rillbook/irrigation/calendar/local-date.js';
import type { ObservedMeter } from './observed-meter.js';
import { quantile } from './robust-spread.js';
import { valueAt } from './value-at.js';

const HOURS = 24;
/** Monday to Friday are one class of days, Saturday and Sunday the other. */
const FIRST_OF_WEEKEND = 5;
/** Weeks from which the profile is learnt: ten days of a weekend, and a season does not move far. Common practice, no source. */
const LEARNT_FROM_DAYS = 35;
/** Fewer steps of an hour than this say nothing of it. */
const LEAST_STEPS = 4;
/** Values above this quantile count as this quantile: a rare event is no habit. */
const WINSORIZED = 0.975;
/** Hours of the night. */
const NIGHT_HOURS = 6;

/** Indoor use by class of day and hour: mean and standard deviation of a step. */
export interface IndoorProfile {
  readonly litres: Float64Array;
  readonly sd: Float64Array;
}

/**
 * Place of a step in the profile.
 *
 * @param dayNumber - Local day number. [d]
 * @param clockMinute - Minutes on the wall clock. [min]
 * @returns Place by class of day and hour. [–]
 */
export function profilePlace(dayNumber: number, clockMinute: number): number {
  const weekend = weekdayOfDayNumber(dayNumber) >= FIRST_OF_WEEKEND;
  return (weekend ? HOURS : 0) + Math.min(HOURS - 1, Math.max(0, Math.floor(clockMinute / 60)));
}

/**
 * Learns the indoor use of a mixed meter by the hour, from steps that no run touched.
 *
 * Each hour's mean and standard deviation, values above the 97.5 % quantile taken as that. An hour that runs always touch takes the
 * mean of the night's other hours, or the least of the known ones.
 *
 * @param meter - The meter. [code]
 * @param day - The newest day that may be used. [–]
 * @returns The profile, or null where no hour is known yet. [L]
 */
export function learnIndoorProfile(meter: ObservedMeter, day: number): IndoorProfile | null {
  const { evidence, usage, days } = meter;
  const values: number[][] = Array.from({ length: 2 * HOURS }, () => []);
  for (let past = Math.max(0, day - LEARNT_FROM_DAYS + 1); past <= day; past++) {
    for (let step = days.firstStep[past] ?? 0; step < valueAt(days.firstStep, past + 1); step++) {
      const used = (usage.litres[step] ?? Number.NaN) - valueAt(meter.claimed, step);
      if (meter.touched[step] || Number.isNaN(used)) continue;
      values[profilePlace(evidence.firstDay + past, days.clockMinute[step] ?? 0)]?.push(used);
    }
  }
  const litres = new Float64Array(2 * HOURS).fill(Number.NaN);
  const sd = new Float64Array(2 * HOURS).fill(Number.NaN);
  values.forEach((ofHour, place) => {
    if (ofHour.length >= LEAST_STEPS) [litres[place], sd[place]] = meanAndSd(ofHour);
  });
  return fillUnseen(litres, sd) ? { litres, sd } : null;
}

function meanAndSd(values: readonly number[]): [number, number] {
  const most = quantile(values, WINSORIZED);
  const kept = values.map((value) => Math.max(0, Math.min(most, value)));
  const mean = kept.reduce((sum, value) => sum + value, 0) / kept.length;
  const squares = kept.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return [mean, Math.sqrt(squares / (kept.length - 1))];
}

function fillUnseen(litres: Float64Array, sd: Float64Array): boolean {
  const seen = [...litres.keys()].filter((place) => !Number.isNaN(litres[place] ?? Number.NaN));
  if (!seen.length) return false;
  for (let place = 0; place < litres.length; place++) {
    if (!Number.isNaN(litres[place] ?? Number.NaN)) continue;
    const other = (place + HOURS) % (2 * HOURS);
    const from = seen.includes(other) ? [other] : nightOrLeast(litres, seen);
    litres[place] = from.reduce((sum, at) => sum + valueAt(litres, at), 0) / from.length;
    sd[place] = from.reduce((sum, at) => Math.max(sum, sd[at] ?? 0), 0);
  }
  return true;
}

function nightOrLeast(litres: Float64Array, seen: readonly number[]): readonly number[] {
  const night = seen.filter((place) => place % HOURS < NIGHT_HOURS);
  if (night.length) return night;
  return [seen.reduce((least, place) => (valueAt(litres, place) < valueAt(litres, least) ? place : least))];
}
