import { probabilityAboveZero } from '../../../uncertainty/normal-probability.js';
import { daysPerMonth, type Sighting } from '../episode-of-sighting.js';
import { waterClusters } from '../runs/water-clusters.js';
import type { ObservedMeter } from '../steps/observed-meter.js';
import { robustSpread } from '../steps/robust-spread.js';
import { runMinutes } from '../steps/run-minutes.js';
import { valueAt } from '../steps/value-at.js';

/** Slack and decision of the cumulative sum, in standard deviations: in control one signal in tens of thousands of days. */
const SLACK = 1;
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
/** Days by which the usual spread is known, and the newest that do not count. */
const SPREAD_DAYS = 35;
const NEWEST_DAYS = 4;
const LEAST_DAYS = 6;
/** The spread is not believed below these shares of the usual day, of the day's runs and of indoor use. Common practice, no source. */
const LEAST_SD_OF_USUAL = 0.02;
const LEAST_SD_OF_RUNS = 0.025;
const LEAST_SD_OF_INDOOR = 0.08;
/** Spread of the runs' litres about the record while too few ran. Common practice, no source. */
const UNLEARNT_SD_OF_RUNS = 0.3;
/** Days without excess that end it. */
const DAYS_TO_END = 2;

/** What is followed of the litres that nothing explains. */
export interface UnexplainedUse {
  readonly litres: Float64Array;
  readonly runLitres: Float64Array;
  sum: number;
  since: number;
  excessDays: number;
  inARow: number;
  calm: number;
  /** Whether a day without runs has shown the excess: else only days that ran can show its end. */
  atRest: boolean;
  frozen: Spread | null;
  open: Sighting | null;
  readonly told: Sighting[];
}

interface Spread {
  readonly target: number;
  readonly restSd: number;
  readonly runShare: number;
  readonly runSd: number;
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
 * Reads the days of the usual spread again, because what explains them is known better.
 *
 * @param meter - The meter. [code]
 * @param unexplained - What is followed; litres already read are replaced. [code]
 * @param day - The newest day, from 0. [–]
 */
export function readAgain(meter: ObservedMeter, unexplained: UnexplainedUse, day: number): void {
  for (let past = Math.max(0, day - SPREAD_DAYS - NEWEST_DAYS); past <= day; past++) {
    if (Number.isNaN(unexplained.runLitres[past] ?? Number.NaN)) continue;
    [unexplained.litres[past], unexplained.runLitres[past]] = dayOf(meter, past) as [number, number];
  }
}

/**
 * Follows the litres of a day that neither runs nor indoor use nor open findings explain, by a cumulative sum against their usual spread.
 *
 * @param meter - The meter. [code]
 * @param unexplained - What is followed. [code]
 * @param day - The day, from 0. [–]
 * @param usual - Litres of a usual day. [L/d]
 */
export function followUnexplained(meter: ObservedMeter, unexplained: UnexplainedUse, day: number, usual: number): void {
  if (meter.kinds[day] === 'not known' || Number.isNaN(usual)) return;
  const [rest, runs] = dayOf(meter, day);
  const spread = unexplained.frozen ?? spreadOf(unexplained, day);
  unexplained.litres[day] = rest;
  unexplained.runLitres[day] = runs;
  if (Number.isNaN(rest + runs) || !spread || meter.kinds[day] === 'skipped') return;
  const excess = rest - spread.target - spread.runShare * runs;
  const resolution = meter.usage.resolutionLitres ?? 0;
  const sd = Math.hypot(
    LEAST_SD_OF_INDOOR * indoorLitres(meter, day),
    Math.max(spread.restSd, LEAST_SD_OF_USUAL * usual, resolution),
    spread.runSd * runs,
    sdByFlows(meter, day),
  );
  const worth = Math.max(WORTH * usual, 2 * resolution);
  const judged: Judged = { day, excess, sd, worth, usual, isAtRest: runs <= 0 };
  if (unexplained.open) review(meter, unexplained, judged);
  else accumulate(meter, unexplained, judged, spread);
}

interface Judged {
  readonly day: number;
  readonly excess: number;
  readonly sd: number;
  readonly worth: number;
  readonly usual: number;
  readonly isAtRest: boolean;
}

// Doubt of the day's runs by that of the zones' flows: √(mᵀ P m).
function sdByFlows(meter: ObservedMeter, day: number): number {
  const { steps, minutes } = runMinutes(meter, day);
  const zones = meter.flows.length;
  const total = new Float64Array(zones);
  for (let at = 0; at < steps * zones; at++) total[at % zones] = valueAt(total, at % zones) + valueAt(minutes, at);
  const ran = [...total.keys()].filter((zone) => valueAt(total, zone) > 0);
  let variance = 0;
  for (const row of ran)
    for (const column of ran)
      variance += valueAt(total, row) * valueAt(total, column) * valueAt(meter.flowCovariance, row * zones + column);
  return Math.sqrt(Math.max(0, variance));
}

function indoorLitres({ days, indoor }: ObservedMeter, day: number): number {
  let litres = 0;
  for (let step = days.firstStep[day] ?? 0; step < valueAt(days.firstStep, day + 1); step++) litres += indoor[step] ?? 0;
  return litres;
}

// Water of an irrigation meter in one piece by itself, a hose or a test: whether it is a run off schedule is judged there.
function onceLitres(meter: ObservedMeter, day: number): number {
  if (meter.evidence.kind === 'mixed') return 0;
  const alone = waterClusters(meter, day, 0).filter((cluster) => cluster.beganAlone && cluster.endedAlone);
  return alone.reduce((sum, { litres }) => sum + litres, 0);
}

function dayOf(meter: ObservedMeter, day: number): readonly [number, number] {
  const { days, usage, expected, indoor, claimed } = meter;
  let [rest, runs, known] = [0, 0, 0];
  const [from, until] = [days.firstStep[day] ?? 0, days.firstStep[day + 1] ?? 0];
  for (let step = from; step < until; step++) {
    const used = usage.litres[step] ?? Number.NaN;
    if (Number.isNaN(used)) continue;
    known += 1;
    runs += expected[step] ?? 0;
    rest += used - valueAt(expected, step) - valueAt(indoor, step) - valueAt(claimed, step);
  }
  return [known > 0 ? ((rest - onceLitres(meter, day)) * (until - from)) / known : Number.NaN, runs];
}

function spreadOf(unexplained: UnexplainedUse, day: number): Spread | null {
  const [rested, ran] = pastDays(unexplained, day);
  if (rested.length + ran.length < LEAST_DAYS) return null;
  const still = rested.length >= LEAST_DAYS ? robustSpread(rested) : { median: 0, sd: 0 };
  const moving = ran.length >= LEAST_DAYS ? robustSpread(ran) : { median: 0, sd: UNLEARNT_SD_OF_RUNS };
  return {
    target: still.median,
    restSd: still.sd * (1 + 2 / Math.max(1, rested.length)),
    runShare: moving.median,
    runSd: Math.max(LEAST_SD_OF_RUNS, moving.sd * (1 + 2 / Math.max(1, ran.length))),
  };
}

// Litres of past days at rest, and of days that ran as a share of their runs.
function pastDays({ litres, runLitres }: UnexplainedUse, day: number): readonly [number[], number[]] {
  const [rested, ran]: [number[], number[]] = [[], []];
  for (let past = day - NEWEST_DAYS; past >= 0 && past > day - NEWEST_DAYS - SPREAD_DAYS; past--) {
    const [rest, runs] = [litres[past] ?? Number.NaN, runLitres[past] ?? Number.NaN];
    if (Number.isNaN(rest + runs)) continue;
    if (runs <= 0) rested.push(rest);
    else if (rest > -HALF * runs) ran.push(rest / runs);
  }
  return [rested, ran];
}

function accumulate(meter: ObservedMeter, unexplained: UnexplainedUse, judged: Judged, spread: Spread): void {
  const { day, sd, worth } = judged;
  if (!isLasting(unexplained, judged)) return;
  const level = meanExcess(unexplained, spread, day);
  if (level.mean < worth) return;
  const sighting = noLitresYet(meter, unexplained.since, day);
  Object.assign(unexplained, { open: sighting, frozen: spread, calm: 0 });
  unexplained.told.push(sighting);
  tell(sighting, level.mean, sd / Math.sqrt(level.days), judged);
}

// Adds a day to the sum: whether it passes its decision, on days of excess that are enough.
function isLasting(unexplained: UnexplainedUse, { day, excess, sd, worth, isAtRest }: Judged): boolean {
  if (unexplained.sum <= 0) Object.assign(unexplained, { since: day, excessDays: 0, atRest: false });
  unexplained.sum = Math.max(0, unexplained.sum + Math.min(MOST_OF_ONE_DAY, excess / sd - SLACK));
  const over = excess >= HALF * worth;
  unexplained.inARow = over ? unexplained.inARow + 1 : 0;
  if (over) unexplained.excessDays += 1;
  unexplained.atRest ||= over && isAtRest;
  const lasting = unexplained.inARow >= DAYS_IN_A_ROW || (over && unexplained.excessDays >= DAYS_APART);
  return lasting && unexplained.sum > DECISION;
}

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

function meanExcess(
  { litres, runLitres, since }: UnexplainedUse,
  spread: Spread,
  day: number,
): { readonly mean: number; readonly days: number } {
  let [sum, days] = [0, 0];
  for (let past = since; past <= day; past++) {
    const excess = (litres[past] ?? Number.NaN) - spread.target - spread.runShare * (runLitres[past] ?? Number.NaN);
    if (Number.isNaN(excess)) continue;
    sum += excess;
    days += 1;
  }
  return { mean: days > 0 ? sum / days : 0, days: Math.max(1, days) };
}

// A day at rest shows the end only of an excess that was there at rest.
function saysOfEnd(unexplained: UnexplainedUse, { excess, worth, isAtRest }: Judged): boolean {
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
    if (unexplained.frozen && !unexplained.calm) tell(sighting, meanExcess(unexplained, unexplained.frozen, day).mean, sd, judged);
    return;
  }
  sighting.clearedMinute = meter.evidence.midnights[day + 1] ?? 0;
  unexplained.open = null;
  unexplained.frozen = null;
  restartUnexplained(unexplained);
}

function tell(sighting: Sighting, litresPerDay: number, sd: number, { usual }: Judged): void {
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
