import { legitimateNightUse } from '../../../night-flow/minimum-night-flow.js';
import { probabilityAboveZero } from '../../../uncertainty/normal-probability.js';
import { daysPerMonth, type Sighting } from '../episode-of-sighting.js';
import type { ObservedMeter } from '../steps/observed-meter.js';
import { quantile, robustSpread } from '../steps/robust-spread.js';
import { type QuietHour, type QuietHours, quietHours, visitQuietHours } from './quiet-hours.js';
import { comeRegularly } from './regular-counts.js';
import { smallestSteadyFlow } from './steady-limit.js';

const MINUTES_PER_HOUR = 60;
const MINUTES_PER_DAY = 1440;
const HOURS_PER_DAY = 24;
/** A flow is steady when every quiet hour of this time has it: one night and more, and less than two days. Common practice, no source. */
const STEADY_HOURS = 30;
const LEAST_QUIET_HOURS = 12;
/** Hours without knowledge after which nothing continues. */
const LOST_AFTER_HOURS = 48;
/** An hour has the flow when it has half of the least that is told: a step of the register, or a dip of pressure. */
const HALF = 0.5;
/** Hours in a row without the flow that end it. */
const HOURS_TO_END = 2;
/** Hours from which the level is told. */
const LEVEL_HOURS = 48;
/** On a mixed meter people add to the flow: its level is among the least hours. */
const LOW_QUANTILE = 0.1;
/** On a mixed meter whose nights are not known, a flow that never falls below this share of the mean. Common practice, no source. */
const NIGHT_OF_MEAN = 0.3;
/** Water of one person and day, by which people are counted from indoor use. Common practice, no source. [L] */
const LITRES_PER_PERSON = 200;
/** Days whose least hour is the usual one, the newest that do not count, and how far beyond it a flow must be. */
const USUAL_DAYS = 28;
const NEWEST_DAYS = 3;
const LEAST_USUAL_DAYS = 7;
const BEYOND_SDS = 4;
/** Beyond what people use in the same hours, it must be this share of the least that is told. */
const OF_LIMIT = 0.8;
/** Room for the last digit of a sum. */
const ROUNDING = 1e-9;
/** A register is coarse for a level when an hour of it makes fewer steps. */
const COARSE_STEPS = 8;

/** What is followed of a meter's quiet hours. */
export interface SteadyFlow {
  readonly hours: QuietHours;
  readonly limit: number;
  readonly legitimate: number;
  readonly leastOfDay: number[];
  streak: number[];
  streakFrom: number;
  hoursInStreak: number;
  beyondIndoor: number;
  indoorVariance: number;
  lastKnown: number;
  lows: number;
  base: number;
  sum: number;
  count: number;
  open: Sighting | null;
  readonly told: Sighting[];
}

/**
 * Nothing followed yet.
 *
 * @param meter - The meter. [code]
 * @returns No streak. [–]
 */
export function noSteadyFlow(meter: ObservedMeter): SteadyFlow {
  const { evidence, usage } = meter;
  const people = evidence.kind === 'mixed' ? (evidence.indoorLitresPerDay ?? 0) / LITRES_PER_PERSON : 0;
  const legitimate = legitimateNightUse(Math.max(0, people)) / MINUTES_PER_HOUR;
  return {
    hours: quietHours(usage.stepMinutes),
    limit: smallestSteadyFlow(evidence) ?? Number.POSITIVE_INFINITY,
    legitimate,
    leastOfDay: [],
    streak: [],
    streakFrom: 0,
    hoursInStreak: 0,
    beyondIndoor: 0,
    indoorVariance: 0,
    lastKnown: 0,
    lows: 0,
    base: legitimate,
    sum: 0,
    count: 0,
    open: null,
    told: [],
  };
}

/**
 * Follows the quiet hours of a day: flow that never stops.
 *
 * @param meter - The meter; the steady level and the litres that it accounts for are set. [code]
 * @param steady - What is followed. [code]
 * @param day - The day, from 0. [–]
 * @returns True when a finding opened. [–]
 */
export function followSteadyFlow(meter: ObservedMeter, steady: SteadyFlow, day: number): boolean {
  if (!steady.open) steady.base = usualLeast(meter, steady);
  let [opened, least, quiet] = [false, Number.POSITIVE_INFINITY, 0];
  visitQuietHours(meter, steady.hours, day, (hour) => {
    const { flow } = hour;
    quiet += 1;
    least = Math.min(least, flow);
    steady.sum += flow;
    steady.count += 1;
    if (followHour(meter, steady, hour)) opened = true;
  });
  if (quiet >= LEAST_QUIET_HOURS / 2 && !steady.open) steady.leastOfDay.push(least);
  if (steady.open) tellLevel(meter, steady, steady.open);
  return opened;
}

function usualLeast({ evidence }: ObservedMeter, { leastOfDay, legitimate }: SteadyFlow): number {
  if (evidence.kind === 'irrigation') return 0;
  const past = leastOfDay.slice(-USUAL_DAYS - NEWEST_DAYS, -NEWEST_DAYS);
  return past.length < LEAST_USUAL_DAYS ? legitimate : robustSpread(past).median;
}

function followHour(meter: ObservedMeter, steady: SteadyFlow, hour: QuietHour): boolean {
  const { begin, flow } = hour;
  const end = begin + steady.hours.hourMinutes;
  const has = flow - steady.base >= leastOfHour(meter, steady);
  if (!steady.open && begin - steady.lastKnown > LOST_AFTER_HOURS * MINUTES_PER_HOUR) steady.streak = [];
  steady.lastKnown = end;
  if (!has) return endStreak(meter, steady, end);
  steady.lows = 0;
  lengthen(steady, hour);
  if (steady.open || end - steady.streakFrom < STEADY_HOURS * MINUTES_PER_HOUR) return false;
  return steady.streak.length >= LEAST_QUIET_HOURS && isSteady(meter, steady) && open(meter, steady, end);
}

function lengthen(steady: SteadyFlow, { begin, flow, indoor, indoorSd }: QuietHour): void {
  if (!steady.streak.length) Object.assign(steady, { streakFrom: begin, hoursInStreak: 0, beyondIndoor: 0, indoorVariance: 0 });
  steady.hoursInStreak += 1;
  steady.beyondIndoor += flow - indoor;
  steady.indoorVariance += indoorSd ** 2;
  steady.streak.push(flow);
  if (steady.streak.length > LEVEL_HOURS) steady.streak.shift();
}

// On a mixed meter, where people make hours with water, an hour may lack a step of the register and no more.
function leastOfHour({ evidence, usage }: ObservedMeter, { limit, hours }: SteadyFlow): number {
  const rounding = (usage.resolutionLitres ?? 0) / hours.hourMinutes;
  return (evidence.kind === 'mixed' ? Math.max(HALF * limit, limit - rounding) : HALF * limit) * (1 - ROUNDING);
}

function endStreak(meter: ObservedMeter, steady: SteadyFlow, end: number): false {
  steady.lows += 1;
  if (steady.open && steady.lows < HOURS_TO_END) return false;
  if (steady.open) {
    tellLevel(meter, steady, steady.open);
    steady.open.clearedMinute = end;
    meter.steadyLPerMin = 0;
    unclaim(meter, end);
  }
  steady.open = null;
  steady.streak = [];
  return false;
}

// The steps after the end were taken to have the flow; the rest of the day has it not.
function unclaim(meter: ObservedMeter, from: number): void {
  meter.claimed.fill(0, Math.max(0, Math.floor((from - meter.usage.firstMinute) / meter.usage.stepMinutes)));
}

function levelOf({ evidence }: ObservedMeter, { streak, base }: SteadyFlow): number {
  return Math.max(0, quantile(streak, evidence.kind === 'mixed' ? LOW_QUANTILE : HALF) - base);
}

function isSteady(meter: ObservedMeter, steady: SteadyFlow): boolean {
  const level = levelOf(meter, steady);
  if (level < steady.limit) return false;
  if (meter.evidence.kind === 'irrigation') return true;
  const past = steady.leastOfDay.slice(-USUAL_DAYS - NEWEST_DAYS, -NEWEST_DAYS);
  const known = past.length >= LEAST_USUAL_DAYS;
  const beyond = known ? BEYOND_SDS * robustSpread(past).sd : (NIGHT_OF_MEAN * steady.sum) / steady.count;
  return level >= beyond && beyondPeople(steady) && regularIfCoarse(meter, steady, level);
}

// The streak's hours together against what people use in them, where that is known.
function beyondPeople({ beyondIndoor, indoorVariance, hoursInStreak, limit }: SteadyFlow): boolean {
  if (Number.isNaN(beyondIndoor)) return true;
  return beyondIndoor >= OF_LIMIT * limit * hoursInStreak && beyondIndoor >= BEYOND_SDS * Math.sqrt(indoorVariance);
}

function regularIfCoarse({ usage }: ObservedMeter, { hours, streak }: SteadyFlow, level: number): boolean {
  const step = usage.resolutionLitres ?? 0;
  if (!(step > 0) || (level * hours.hourMinutes) / step >= COARSE_STEPS) return true;
  const nightHours = [...streak].sort((a, b) => a - b).slice(0, Math.ceil(streak.length / 2));
  return comeRegularly(nightHours.map((flow) => (flow * hours.hourMinutes) / step));
}

function open(meter: ObservedMeter, steady: SteadyFlow, end: number): true {
  const { usage } = meter;
  const sighting: Sighting = {
    kind: 'steady flow',
    code: 'steady flow',
    zones: [],
    ofZone: false,
    fromMinute: steady.streakFrom,
    openedMinute: end,
    clearedMinute: null,
    litres: null,
    sdLitres: null,
    costs: true,
    confidence: 1,
    evidence: {},
    details: {},
  };
  steady.open = sighting;
  steady.told.push(sighting);
  tellLevel(meter, steady, sighting);
  const first = Math.floor((steady.streakFrom - usage.firstMinute) / usage.stepMinutes);
  const last = Math.floor((end - usage.firstMinute) / usage.stepMinutes);
  const dayEnd = meter.days.firstStep.find((step) => step >= last) ?? last;
  meter.claimed.fill(meter.steadyLPerMin * usage.stepMinutes, Math.max(0, first), dayEnd);
  return true;
}

function tellLevel(meter: ObservedMeter, steady: SteadyFlow, sighting: Sighting): void {
  const level = levelOf(meter, steady);
  const { median, sd } = robustSpread(steady.streak);
  const error = Math.max(median > 0 ? sd / Math.sqrt(steady.streak.length) : 0, meterStep(meter, steady));
  meter.steadyLPerMin = level;
  sighting.litres = level * MINUTES_PER_DAY * daysPerMonth;
  sighting.sdLitres = error * MINUTES_PER_DAY * daysPerMonth;
  sighting.confidence = probabilityAboveZero(level, error);
  sighting.evidence = { quietHours: steady.streak.length, limitLPerMin: steady.limit, usualNightLPerMin: steady.base };
  const soFar = level * (steady.lastKnown - sighting.fromMinute);
  sighting.details = {
    litresPerMinute: level,
    litresPerDay: level * MINUTES_PER_HOUR * HOURS_PER_DAY,
    litresSoFar: soFar,
    limitLPerMin: steady.limit,
    lookAt: meter.evidence.kind === 'irrigation' ? 'main and valves' : 'main, valves and indoor',
  };
}

// Rounding of the register over the hours from which the level is told. [L/min]
function meterStep({ usage }: ObservedMeter, { streak, hours }: SteadyFlow): number {
  return (usage.resolutionLitres ?? 0) / (hours.hourMinutes * Math.max(1, streak.length));
}
