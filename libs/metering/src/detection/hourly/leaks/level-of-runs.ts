import { litresOfOtherSettings } from '../steps/about-settings.js';
import type { ObservedMeter } from '../steps/observed-meter.js';
import { quantile, robustSpread } from '../steps/robust-spread.js';
import { runMinutes } from '../steps/run-minutes.js';
import { valueAt } from '../steps/value-at.js';
import { handLitresAWeek } from '../steps/hand-litres.js';
import { litresBack } from './litres-back.js';
import { sdByFlows } from './litres-of-day.js';

/** Days that ran by which the level of late is known, the fewest, and those among which days like the newest are looked for. */
const LEVEL_DAYS = 8;
const FEWEST_DAYS = 4;
const KEPT_DAYS = 40;
/** Days are alike when the litres of their zones point the same way: cosine. Flows that are not learnt yet are off in other ways on other days. */
const ALIKE = 0.95;
/** A hand that waters from the meter does so twice a week, more or less. Common practice, no source. */
const OF_HAND_WEEK = 0.5;
/** Days by which it is known how often days like the newest come. */
const OFTEN_DAYS = 28;
/** Windows of newest days that ran, and how many of the site's own standard deviations a step of the level must be. */
const WINDOWS: readonly (readonly [days: number, decision: number])[] = [
  [1, 4.5],
  [2, 4.5],
  [3, 4.5],
];
/** A step is no smaller than this share of the runs, and each of its days has half of it. Common practice, no source. */
const LEAST_STEP = 0.06;
const HALF = 0.5;
/** What is assumed of a day's runs, of the level, and of how it wanders in a day, before the site's own days say it. Common practice, no source. */
const DAY_SD = 0.01;
const LEVEL_SD = 0.005;
const WANDER_OF_DAY = 0.004;
/** Doubt of runs that are longer or shorter than those before, for each e-fold: valves, filling and clocks count more in short runs. Common practice, no source. */
const LENGTH_SD = 0.03;
/** Of the doubt of flows this share is of the day: the rest is in the level of days like it as well. */
const OF_FLOWS = 0.3;
/** Indoor use is not known better than by this share. */
const OF_INDOOR = 0.08;
/** A day's runs are the difference of two roundings, twice: before and after midnight. */
const ROUNDINGS = 2 / 6;
/** Variance of a median, in that of a mean: normal quantities. */
const VARIANCE_OF_MEDIAN = Math.PI / 2;
/** Steps of the past by which the site's own scale is known, and its least. */
const SCALE_STEPS = 60;
const LEAST_SCALE = 0.5;
/** Nine of ten normal quantities are nearer to the median than so many standard deviations. */
const TAIL = 0.9;
const NORMAL_TAIL = 1.645;
/** What is assumed of the scale before, and as how many steps that counts. Common practice, no source. */
const ASSUMED_SCALE = 1.5;
const ASSUMED_STEPS = 6;

/** What a day says of the runs: the share by which they pass more than is expected, and its doubt. */
interface DayOfRuns {
  readonly day: number;
  readonly share: number;
  readonly sd: number;
  /** Share by which settings of the runs beside it would have passed more. */
  readonly otherSettings: number;
  /** Litres of each zone, of length 1, and all together. */
  readonly zones: Float64Array;
  readonly runs: number;
}

/** What is followed of the level of runs: days that ran, and the steps of the past in what was assumed, by window. */
export interface LevelOfRuns {
  days: DayOfRuns[];
  readonly steps: readonly number[][];
}

/** A step of the level of runs: the share by which they pass more, since which day, the level before, and the litres of a day of the calendar. */
export interface StepOfLevel {
  readonly since: number;
  readonly level: number;
  readonly step: number;
  readonly sd: number;
  readonly ofDays: readonly number[];
  readonly litresPerDay: number;
  readonly sdLitresPerDay: number;
}

/**
 * Nothing followed yet.
 *
 * @returns No day. [–]
 */
export function noLevelOfRuns(): LevelOfRuns {
  return { days: [], steps: WINDOWS.map(() => []) };
}

/**
 * Follows the share by which runs pass more than is expected of them: a matched filter for a step of its level.
 *
 * z = (mean of the newest days − median of those before) / (scale · sd); the scale is that of the site's own steps of the past, so that pressure which
 * wanders slowly is in the level, and what a site's days scatter is in the scale.
 *
 * @param meter - The meter. [code]
 * @param level - What is followed. [code]
 * @param day - The day, from 0; one that ran. [–]
 * @returns The step, from the shortest window that shows it; null where there is none. [–]
 */
export function followLevel(meter: ObservedMeter, level: LevelOfRuns, day: number): StepOfLevel | null {
  const newest = dayOfRuns(meter, day);
  if (!newest) return null;
  level.days = [...level.days, newest].slice(-KEPT_DAYS);
  const found = WINDOWS.map(([window, decision], at) => {
    const own = stepOf(meter, level.days, window);
    if (!own) return null;
    const past = level.steps[at] as number[];
    const scale = scaleOf(past);
    past.push(own.step / own.sd);
    if (past.length > SCALE_STEPS) past.shift();
    const decided = Math.max(LEAST_STEP, decision * scale * own.sd);
    return own.step >= decided && isSaid(own, newest, decided) ? own : null;
  });
  return found.find((step) => step !== null) ?? null;
}

/**
 * Reads the days of the level again, because what explains them is known better.
 *
 * @param meter - The meter. [code]
 * @param level - What is followed. [code]
 */
export function readLevelAgain(meter: ObservedMeter, level: LevelOfRuns): void {
  level.days = level.days.flatMap(({ day }) => dayOfRuns(meter, day) ?? []);
}

/**
 * Forgets the newest days of the level: they belong to what was found.
 *
 * @param level - What is followed. [code]
 * @param since - The first day that is forgotten, from 0. [–]
 */
export function forgetLevelSince(level: LevelOfRuns, since: number): void {
  level.days = level.days.filter(({ day }) => day < since);
}

function dayOfRuns(meter: ObservedMeter, day: number): DayOfRuns | null {
  if (meter.excused[day]) return null;
  const { days, usage, expected, indoor, indoorSd, claimed, touched } = meter;
  let [off, runs, people, variance] = [0, 0, 0, 0];
  for (let step = valueAt(days.firstStep, day); step < valueAt(days.firstStep, day + 1); step++) {
    const used = valueAt(usage.litres, step);
    if (!touched[step] || Number.isNaN(used)) continue;
    off += used - valueAt(expected, step) - valueAt(indoor, step) - valueAt(claimed, step);
    runs += valueAt(expected, step);
    people += valueAt(indoor, step);
    variance += valueAt(indoorSd, step) ** 2;
  }
  const back = litresBack(meter, day);
  off -= back;
  runs += back;
  if (!(runs > 0) || Number.isNaN(off)) return null;
  const rounding = Math.sqrt(ROUNDINGS) * (usage.resolutionLitres ?? 0);
  const litres = Math.hypot(
    rounding,
    OF_FLOWS * sdByFlows(meter, day),
    Math.sqrt(variance),
    OF_INDOOR * people,
    OF_HAND_WEEK * handLitresAWeek(meter, day),
  );
  const otherSettings = litresOfOtherSettings(meter, day) / runs;
  return { day, share: off / runs, sd: Math.hypot(DAY_SD, litres / runs), otherSettings, zones: directionOf(meter, day), runs };
}

function directionOf(meter: ObservedMeter, day: number): Float64Array {
  const { steps, minutes } = runMinutes(meter, day);
  const zones = meter.flows.length;
  const litres = new Float64Array(zones);
  for (let at = 0; at < steps * zones; at++)
    litres[at % zones] = valueAt(litres, at % zones) + valueAt(minutes, at) * (meter.flows[at % zones] || 1);
  const length = Math.hypot(...litres);
  return length > 0 ? litres.map((own) => own / length) : litres;
}

const areAlike = (one: DayOfRuns, other: DayOfRuns): boolean =>
  one.zones.reduce((sum, own, zone) => sum + own * valueAt(other.zones, zone), 0) >= ALIKE;

// Days are compared with days like themselves.
function stepOf(meter: ObservedMeter, days: readonly DayOfRuns[], window: number): StepOfLevel | null {
  const newest = days[days.length - 1] as DayOfRuns;
  const alike = days.filter((day) => areAlike(day, newest));
  const [now, before] = [alike.slice(-window), alike.slice(0, -window).slice(-LEVEL_DAYS)];
  if (now.length < window || before.length < FEWEST_DAYS) return null;
  const { median: level, sd: scatter } = robustSpread(before.map(({ share }) => share));
  const since = (now[0] as DayOfRuns).day;
  const apart = since - (before[Math.floor(before.length / 2)] as DayOfRuns).day;
  const assumed = Math.hypot(
    Math.sqrt(now.reduce((sum, one) => sum + one.sd ** 2, 0)) / window,
    before.reduce((sum, one) => sum + one.sd, 0) / before.length ** 1.5,
    LEVEL_SD,
    LENGTH_SD *
      Math.log(
        newest.runs /
          quantile(
            before.map(({ runs }) => runs),
            0.5,
          ),
      ),
    WANDER_OF_DAY * Math.sqrt(apart),
  );
  // Days before that do not agree have no level to step from.
  const sd = Math.max(assumed, scatter * Math.sqrt(1 / window + VARIANCE_OF_MEDIAN / before.length));
  const ofDays = now.map(({ share }) => share - level);
  const litres = now.reduce((sum, one) => sum + (one.share - level) * one.runs, 0) / window;
  const often = shareOfDays(meter, alike, newest.day);
  const sdLitresPerDay = ((sd * now.reduce((sum, { runs }) => sum + runs, 0)) / window) * often;
  return {
    since,
    level,
    step: ofDays.reduce((sum, one) => sum + one, 0) / window,
    sd,
    ofDays,
    litresPerDay: litres * often,
    sdLitresPerDay,
  };
}

// How often days like the newest come: what more they pass says nothing of other days.
function shareOfDays({ kinds }: ObservedMeter, alike: readonly DayOfRuns[], newest: number): number {
  const from = Math.max(0, newest - OFTEN_DAYS + 1);
  const known = kinds.slice(from, newest + 1).filter((kind) => kind !== 'not known').length;
  return alike.filter(({ day }) => day >= from).length / Math.max(1, known);
}

function scaleOf(past: readonly number[]): number {
  const own = past.length > 1 ? spreadOf(past) : 0;
  const together = (past.length * own ** 2 + ASSUMED_STEPS * ASSUMED_SCALE ** 2) / (past.length + ASSUMED_STEPS);
  return Math.max(LEAST_SCALE, Math.sqrt(together));
}

// By the middle and by the tails, the larger: steps of a coarse register are mostly none.
function spreadOf(steps: readonly number[]): number {
  const { median, sd } = robustSpread(steps);
  return Math.max(
    sd,
    quantile(
      steps.map((step) => Math.abs(step - median)),
      TAIL,
    ) / NORMAL_TAIL,
  );
}

// Each day says it; and one alone says more than settings that were set a run earlier or later than they were written down.
function isSaid({ step, ofDays }: StepOfLevel, newest: DayOfRuns, decided: number): boolean {
  if (ofDays.length === 1) return step - newest.otherSettings >= decided;
  return ofDays.every((one) => one >= HALF * step);
}
