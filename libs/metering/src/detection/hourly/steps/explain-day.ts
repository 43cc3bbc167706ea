import type { IndoorProfile } from './indoor-profile.js';
import { profilePlace } from './indoor-profile.js';
import type { DayKind, ObservedMeter, RunMinutes } from './observed-meter.js';
import { runMinutes } from './run-minutes.js';
import { valueAt } from './value-at.js';

/** A day is judged when at least this share of its steps is known, and of the steps that runs touched. */
const LEAST_KNOWN_SHARE = 0.8;

/** Runs that pass less than this share of what is expected passed no water: a rain sensor, a closed valve. Common practice, no source. */
const SKIPPED_SHARE = 0.2;

/** A register that counts in large steps shows nothing of a small run: so many steps must be missing. */
const STEPS_MISSING = 2;

const MINUTES_PER_DAY = 1440;

/**
 * Explains a day's steps by what is known when it begins: the litres of the runs, indoor use, and what open findings account for.
 *
 * @param meter - The meter; the steps of the day are filled. [code]
 * @param day - The day, from 0. [–]
 * @param profile - Indoor use by the hour, or null while it is not learnt. [L]
 * @returns The minutes of each zone in each step. [min]
 */
export function explainDay(meter: ObservedMeter, day: number, profile: IndoorProfile | null): RunMinutes {
  const { evidence, usage, flows, factors } = meter;
  const design = runMinutes(meter, day);
  meter.factorOfDay.set(factors, day * flows.length);
  expectRuns(meter, day, design);
  for (let step = 0; step < design.steps; step++) {
    const at = design.fromStep + step;
    meter.touched[at] = design.touched[step] ?? 0;
    meter.claimed[at] = meter.steadyLPerMin * usage.stepMinutes;
    if (evidence.kind === 'mixed') explainIndoor(meter, at, evidence.firstDay + day, profile);
  }
  return design;
}

/**
 * Fills the litres that are expected of a day's runs, by the flows now believed and the changes known of that day.
 *
 * @param meter - The meter. [code]
 * @param day - The day, from 0. [–]
 * @param design - Minutes of the day, where they are at hand. [min]
 */
export function expectRuns(meter: ObservedMeter, day: number, design: RunMinutes = runMinutes(meter, day)): void {
  const { flows, factorOfDay, expected } = meter;
  const zones = flows.length;
  for (let step = 0; step < design.steps; step++) {
    let litres = 0;
    for (let zone = 0; zone < zones; zone++) {
      const minutes = design.minutes[step * zones + zone] as number;
      if (minutes > 0) litres += minutes * (flows[zone] as number) * (factorOfDay[day * zones + zone] as number);
    }
    expected[design.fromStep + step] = litres;
  }
}

// Indoor use is not known before its profile is: a mean over the day would be wrong at night, when runs are judged.
function explainIndoor(meter: ObservedMeter, step: number, dayNumber: number, profile: IndoorProfile | null): void {
  const place = profilePlace(dayNumber, valueAt(meter.days.clockMinute, step));
  meter.indoor[step] = profile?.litres[place] ?? Number.NaN;
  meter.indoorSd[step] = profile?.sd[place] ?? Number.NaN;
}

/**
 * Judges what kind of day it was, once it is over.
 *
 * @param meter - The meter; the day's kind and its litres are set, and the day is noted among those that ran. [code]
 * @param day - The day, from 0. [–]
 * @returns Its kind. [code]
 */
export function closeDay(meter: ObservedMeter, day: number): DayKind {
  const sums = sumsOf(meter, day);
  const { steps, known, used, touchedSteps, knownTouched } = sums;
  const enough = steps > 0 && known >= LEAST_KNOWN_SHARE * steps && knownTouched >= LEAST_KNOWN_SHARE * touchedSteps;
  if (changesClocks(meter, day)) meter.excused[day] = 2;
  if (steps > 0 && known >= LEAST_KNOWN_SHARE * steps) meter.usedLitres[day] = (used * steps) / known;
  const kind = enough ? kindOf(meter, day, sums) : 'not known';
  meter.kinds[day] = kind;
  if (kind === 'ran') meter.ranDays.push(day);
  return kind;
}

// Whether a timer changes its clock in the same night, an hour late or by hand days later, nobody knows: its runs of that day are not judged.
function changesClocks({ evidence: { midnights } }: ObservedMeter, day: number): boolean {
  return Math.abs(valueAt(midnights, day + 1) - valueAt(midnights, day) - MINUTES_PER_DAY) > 1;
}

interface DaySums {
  steps: number;
  known: number;
  used: number;
  touchedSteps: number;
  knownTouched: number;
  expected: number;
  delivered: number;
}

function sumsOf(meter: ObservedMeter, day: number): DaySums {
  const sums = { steps: 0, known: 0, used: 0, touchedSteps: 0, knownTouched: 0, expected: 0, delivered: 0 };
  for (let step = meter.days.firstStep[day] ?? 0; step < valueAt(meter.days.firstStep, day + 1); step++) {
    const used = meter.usage.litres[step] ?? Number.NaN;
    sums.steps += 1;
    sums.touchedSteps += meter.touched[step] ?? 0;
    if (Number.isNaN(used)) continue;
    sums.known += 1;
    sums.used += used;
    if (!meter.touched[step]) continue;
    sums.knownTouched += 1;
    sums.expected += meter.expected[step] ?? 0;
    sums.delivered += used - valueAt(meter.indoor, step) - valueAt(meter.claimed, step);
  }
  return sums;
}

function kindOf(meter: ObservedMeter, day: number, { expected, delivered, touchedSteps }: DaySums): DayKind {
  const { evidence, usage } = meter;
  if (!isTold(evidence, day) || Number.isNaN(delivered)) return 'not known';
  if (!touchedSteps) return 'at rest';
  if (Number.isNaN(expected)) return delivered > 0 ? 'ran' : 'skipped';
  const resolution = usage.resolutionLitres ?? 0;
  if (expected <= 0) return isBack(meter, day, { delivered, resolution }) ? 'ran' : 'at rest';
  return isWithout(resolution, expected, delivered) ? 'skipped' : 'ran';
}

// Of zones that are known to pass nothing: they pass water again.
function isBack(meter: ObservedMeter, day: number, { delivered, resolution }: { delivered: number; resolution: number }): boolean {
  const runs = meter.runs[day] ?? [];
  const whole = runs.reduce((sum, { zone, begin, end }) => sum + (end - begin) * valueAt(meter.flows, zone), 0);
  return whole > 0 && delivered >= SKIPPED_SHARE * whole && delivered >= STEPS_MISSING * resolution;
}

function isTold({ programmedLitres, programmedIsEstimate }: ObservedMeter['evidence'], day: number): boolean {
  return !Number.isNaN(programmedLitres[day] ?? Number.NaN) && !programmedIsEstimate[day];
}

function isWithout(resolution: number, expected: number, delivered: number): boolean {
  return delivered < SKIPPED_SHARE * expected && expected - delivered >= STEPS_MISSING * resolution;
}
