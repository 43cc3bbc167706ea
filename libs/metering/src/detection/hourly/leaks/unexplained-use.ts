import { probabilityAboveZero } from '../../../uncertainty/normal-probability.js';
import { daysPerMonth, type Sighting } from '../episode-of-sighting.js';
import { lastRunMinute } from '../flows/zone-sighting.js';
import { litresOfOtherSettings } from '../steps/about-settings.js';
import type { ObservedMeter } from '../steps/observed-meter.js';
import { followLevel, forgetLevelSince, type LevelOfRuns, noLevelOfRuns, readLevelAgain } from './level-of-runs.js';
import { dayOf, indoorLitres, sdByFlows } from './litres-of-day.js';
import { beganAt, meanExcess } from './mean-excess.js';
import { spreadBefore, spreadDays, type UsualSpread } from './usual-spread.js';
import type { UsualUse } from './usual-use.js';

/** Slack and decision of the cumulative sum, in standard deviations: in control one signal in tens of thousands of days. */
const SLACK = 1;
/** As much more where the doubt is all of the runs: their level wanders, and each day is as much off as the day before. */
const SLACK_OF_RUNS = 1;
const DECISION = 5;
/** What one day may add: no single day is a signal. */
const MOST_OF_ONE_DAY = 4;
/** Share of the usual month's daily use that is to be found. */
const WORTH = 0.1;
/** A day counts as one of excess from this share of what is to be found. */
const HALF = 0.5;
/** Days of excess that open: two in a row, or three. */
const DAYS_IN_A_ROW = 2;
const DAYS_APART = 3;
/** One day is enough beyond so many standard deviations and from a usual day. Common practice, no source. */
const BURST_SDS = 8;
/** A day's volume is the difference of two roundings: its variance in squared steps of the register (JCGM 100:2008, 4.3.7). */
const ROUNDING_VARIANCE = 1 / 6;
/** The days together must show it with this confidence. */
const LEAST_CONFIDENCE = 0.99;
/** The spread is not believed below these shares of the usual day, of the day's runs and of indoor use. Common practice, no source. */
const LEAST_SD_OF_USUAL = 0.02;
const LEAST_SD_OF_INDOOR = 0.08;
/** A leak is steady from some hours after its begin. */
const APART_DAYS = 3;
const MINUTES_PER_DAY = 1440;
/** Days without excess that end it. */
const DAYS_TO_END = 2;

/** What is followed of the litres that nothing explains. */
export interface UnexplainedUse {
  readonly litres: Float64Array;
  readonly runLitres: Float64Array;
  readonly level: LevelOfRuns;
  sum: number;
  since: number;
  excessDays: number;
  inARow: number;
  calm: number;
  /** Whether a day without runs has shown the excess: else only days that ran can show its end. */
  atRest: boolean;
  frozen: UsualSpread | null;
  open: Sighting | null;
  readonly told: Sighting[];
}

/**
 * Nothing followed yet.
 *
 * @param days - Number of days. [–]
 * @returns A sum of zero. [–]
 */
export function noUnexplainedUse(days: number): UnexplainedUse {
  const unknown = () => new Float64Array(days).fill(Number.NaN);
  return {
    litres: unknown(),
    runLitres: unknown(),
    level: noLevelOfRuns(),
    sum: 0,
    since: 0,
    excessDays: 0,
    inARow: 0,
    calm: 0,
    atRest: false,
    frozen: null,
    open: null,
    told: [],
  };
}

/**
 * Starts the sum anew: what it cumulated has got another explanation.
 *
 * @param unexplained - What is followed. [–]
 */
export function restartUnexplained(unexplained: UnexplainedUse): void {
  unexplained.sum = 0;
  unexplained.excessDays = 0;
  unexplained.inARow = 0;
}

/**
 * Hands over to a steady flow that was found: what was unexplained since the same days was its beginning, and is as much as it.
 *
 * @param unexplained - What is followed; its open sighting ends. [–]
 * @param steady - The steady flow. [code]
 */
export function becomesSteady(unexplained: UnexplainedUse, steady: Sighting): void {
  const { open } = unexplained;
  if (open && open.fromMinute >= steady.fromMinute - APART_DAYS * MINUTES_PER_DAY) {
    open.litres = steady.litres;
    open.sdLitres = steady.sdLitres;
    open.clearedMinute = steady.openedMinute;
    unexplained.open = null;
    unexplained.frozen = null;
  }
  restartUnexplained(unexplained);
}

/**
 * Reads the days of the usual spread again, because what explains them is known better.
 *
 * @param meter - The meter. [code]
 * @param unexplained - What is followed; litres already read are replaced. [code]
 * @param day - The newest day, from 0. [–]
 */
export function readAgain(meter: ObservedMeter, unexplained: UnexplainedUse, day: number): void {
  for (let past = Math.max(0, day - spreadDays.all - spreadDays.newest); past <= day; past++) {
    if (Number.isNaN(unexplained.runLitres[past] ?? Number.NaN)) continue;
    [unexplained.litres[past], unexplained.runLitres[past]] = dayOf(meter, past) as [number, number];
  }
  readLevelAgain(meter, unexplained.level);
}

/**
 * Follows the litres of a day that neither runs nor indoor use nor open findings explain, by a cumulative sum against their usual spread.
 *
 * @param meter - The meter. [code]
 * @param unexplained - What is followed. [code]
 * @param day - The day, from 0. [–]
 * @param use - Litres of a usual day, of late and all year. [L/d]
 */
export function followUnexplained(meter: ObservedMeter, unexplained: UnexplainedUse, day: number, use: UsualUse): void {
  const usual = use.ofLate;
  if (meter.kinds[day] === 'not known' || Number.isNaN(usual)) return;
  const [rest, runs] = dayOf(meter, day);
  const spread = unexplained.frozen ?? spreadBefore(unexplained, day);
  unexplained.litres[day] = rest;
  unexplained.runLitres[day] = runs;
  if (Number.isNaN(rest + runs) || !spread || meter.kinds[day] === 'skipped') return;
  const excess = rest - spread.target - spread.runShare * runs;
  const resolution = meter.usage.resolutionLitres ?? 0;
  const runsSd = Math.hypot(spread.runSd * runs, sdByFlows(meter, day));
  const sd = Math.hypot(
    LEAST_SD_OF_INDOOR * indoorLitres(meter, day),
    Math.max(spread.restSd, LEAST_SD_OF_USUAL * usual, Math.sqrt(ROUNDING_VARIANCE) * resolution),
    runsSd,
  );
  const worth = Math.max(WORTH * Math.min(usual, use.ofYear), 2 * resolution);
  const judged: Judged = { day, excess, sd, runsSd, worth, usual, runs };
  if (unexplained.open) review(meter, unexplained, judged);
  else accumulate(meter, unexplained, judged, spread);
}

interface Judged {
  readonly day: number;
  readonly excess: number;
  readonly sd: number;
  /** The part of it that is of the runs. */
  readonly runsSd: number;
  readonly worth: number;
  readonly usual: number;
  readonly runs: number;
}

function accumulate(meter: ObservedMeter, unexplained: UnexplainedUse, judged: Judged, spread: UsualSpread): void {
  const { day, sd, worth, runs } = judged;
  const step = meter.kinds[day] === 'ran' ? followLevel(meter, unexplained.level, day) : null;
  const lasts = isLasting(unexplained, judged);
  if (step && step.step * runs >= HALF * worth) {
    const sighting = begin(meter, unexplained, judged, { since: step.since, frozen: { ...spread, runShare: step.level } });
    // Runs say it as soon as they are over.
    sighting.openedMinute = lastRunMinute(meter, day);
    tell(sighting, step.litresPerDay, step.sdLitresPerDay, judged);
    return;
  }
  if (!lasts && !isBurst(meter, judged)) return;
  const since = beganAt(unexplained, day, spread);
  const level = meanExcess(unexplained, { since, until: day }, spread);
  if (level.mean < worth || probabilityAboveZero(level.mean, sd / Math.sqrt(level.days)) < LEAST_CONFIDENCE) return;
  const sighting = begin(meter, unexplained, judged, { since, frozen: spread });
  tell(sighting, level.mean, sd / Math.sqrt(level.days), judged);
}

// As much as a whole usual day: whatever it is, nobody should wait for a second one.
function isBurst(meter: ObservedMeter, { day, excess, sd, usual }: Judged): boolean {
  const people = meter.evidence.kind === 'mixed' ? indoorLitres(meter, day) : 0;
  return !meter.excused[day] && excess > BURST_SDS * sd && excess - litresOfOtherSettings(meter, day) >= usual + people;
}

function begin(
  meter: ObservedMeter,
  unexplained: UnexplainedUse,
  { day }: Judged,
  { since, frozen }: { readonly since: number; readonly frozen: UsualSpread },
): Sighting {
  const sighting = noLitresYet(meter, since, day);
  Object.assign(unexplained, { open: sighting, since, frozen, calm: 0 });
  unexplained.told.push(sighting);
  forgetLevelSince(unexplained.level, since);
  return sighting;
}

// Adds a day to the sum: whether it passes its decision, on days of excess that are enough.
function isLasting(unexplained: UnexplainedUse, { day, excess, sd, runsSd, worth, runs }: Judged): boolean {
  const slack = SLACK + SLACK_OF_RUNS * (runsSd / sd) ** 2;
  const isAtRest = runs <= 0;
  const over = excess >= HALF * worth;
  if (!over && isAtRest && comesWithRuns(unexplained)) return false;
  if (unexplained.sum <= 0) Object.assign(unexplained, { since: day, excessDays: 0, atRest: false });
  unexplained.sum = Math.max(0, unexplained.sum + Math.min(MOST_OF_ONE_DAY, excess / sd - slack));
  unexplained.inARow = over ? unexplained.inARow + 1 : 0;
  unexplained.excessDays += Number(over);
  unexplained.atRest ||= over && isAtRest;
  return unexplained.sum > DECISION && over && isOften(unexplained);
}

// A day at rest says nothing against it.
const comesWithRuns = ({ sum, atRest }: UnexplainedUse): boolean => sum > 0 && !atRest;

const isOften = ({ inARow, excessDays }: UnexplainedUse): boolean => inARow >= DAYS_IN_A_ROW || excessDays >= DAYS_APART;

function noLitresYet(meter: ObservedMeter, since: number, day: number): Sighting {
  return {
    kind: 'unexplained use',
    code: 'unexplained use',
    zones: [],
    ofZone: false,
    fromMinute: meter.evidence.midnights[since] ?? 0,
    openedMinute: meter.evidence.midnights[day + 1] ?? 0,
    clearedMinute: null,
    litres: null,
    sdLitres: null,
    costs: true,
    confidence: 1,
    evidence: {},
    details: {},
  };
}

// A day at rest shows the end only of an excess that was there at rest.
function saysOfEnd(unexplained: UnexplainedUse, { excess, worth, runs }: Judged): boolean {
  const isAtRest = runs <= 0;
  if (isAtRest && excess >= HALF * worth) unexplained.atRest = true;
  return !isAtRest || unexplained.atRest;
}

function review(meter: ObservedMeter, unexplained: UnexplainedUse, judged: Judged): void {
  if (!saysOfEnd(unexplained, judged)) return;
  const { day, excess, worth, sd } = judged;
  unexplained.calm = excess < HALF * worth ? unexplained.calm + 1 : 0;
  const sighting = unexplained.open;
  if (!sighting) return;
  if (unexplained.calm < DAYS_TO_END) {
    if (unexplained.frozen && !unexplained.calm)
      tell(sighting, meanExcess(unexplained, { since: unexplained.since, until: day }, unexplained.frozen).mean, sd, judged);
    return;
  }
  sighting.clearedMinute = meter.evidence.midnights[day + 1] ?? 0;
  unexplained.open = null;
  unexplained.frozen = null;
  restartUnexplained(unexplained);
}

function tell(sighting: Sighting, litresPerDay: number, sd: number, { usual }: Judged): void {
  // What explains the days may be known better since: then it is as it was told last, until it ends.
  if (!(litresPerDay > 0) && sighting.litres !== null) return;
  sighting.litres = litresPerDay * daysPerMonth;
  sighting.sdLitres = sd * daysPerMonth;
  sighting.confidence = probabilityAboveZero(litresPerDay, sd);
  sighting.evidence = { spreadLitresPerDay: sd, usualLitresPerDay: usual };
  sighting.details = {
    litresPerDay,
    usualLitresPerDay: usual,
    shareOfUsual: litresPerDay / usual,
    lookAt: 'main, valves and runs not on record',
  };
}
