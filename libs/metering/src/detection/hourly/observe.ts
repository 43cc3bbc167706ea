import type { MeterEvidence, StepUsage } from '../evidence/meter-evidence.js';
import { fitZoneFlows } from './flows/fit-zone-flows.js';
import { followDelivery, type NoDelivery, noNoDelivery } from './delivery/no-delivery.js';
import { keepMost, type Sighting } from './episode-of-sighting.js';
import { dayEquations, flowsByShift } from './flows/day-equations.js';
import { followZones, noZoneChanges, type ZoneChanges } from './flows/zone-changes.js';
import { followSteadyFlow, noSteadyFlow, type SteadyFlow } from './leaks/steady-flow.js';
import {
  becomesSteady,
  followUnexplained,
  noUnexplainedUse,
  readAgain,
  restartUnexplained,
  type UnexplainedUse,
} from './leaks/unexplained-use.js';
import { moveUsualUse, noUsualUse, type UsualUse } from './leaks/usual-use.js';
import { followOffSchedule, noOffSchedule, type OffSchedule } from './runs/off-schedule-run.js';
import { followRain, noWateredInRain, type WateredInRain } from './runs/watered-in-rain.js';
import { followRecord, noRecordedFlows, type RecordedFlows } from './flows/recorded-flows.js';
import { learnPressure, learnScatter } from './flows/learn-scatter.js';
import { refineShifts } from './flows/refine-shifts.js';
import { learnShifts } from './steps/clock-shift.js';
import { closeDay, expectRuns, explainDay } from './steps/explain-day.js';
import { type IndoorProfile, learnIndoorProfile } from './steps/indoor-profile.js';
import { type ObservedMeter, observedMeter, type RunMinutes } from './steps/observed-meter.js';

/** Days on which runs passed water, from one learning of flows and clocks to the next. */
const LEARN_EVERY = 5;
/** A learning takes this many of them, and leaves out the newest: they may be what is judged. Common practice, no source. */
const LEARN_FROM = 30;
const LEAVE_OUT = 13;
/** So many of them must have run a zone. Common practice, no source. */
const LEAST_OF_ZONE = 8;
/** A first learning takes what there is. */
const LEAST_LEFT = 12;
/** Clocks are learnt from the newest days. */
const CLOCK_DAYS = 10;
/** Days on which runs passed water, from one refinement of clocks to the next, and those that it takes. */
const REFINE_EVERY = 10;
const REFINE_DAYS = 12;
/** Days from one learning of indoor use to the next. */
const INDOOR_EVERY = 7;

/** One meter and all that is followed of it. */
export interface Observation {
  readonly meter: ObservedMeter;
  readonly steady: SteadyFlow;
  readonly zones: ZoneChanges;
  readonly delivery: NoDelivery;
  readonly off: OffSchedule;
  readonly wet: WateredInRain;
  readonly unexplained: UnexplainedUse;
  readonly record: RecordedFlows;
  readonly told: boolean[];
}

/**
 * Walks through a meter's days as an observer who sees each step when it comes.
 *
 * Steps of a day are explained by what was learnt from earlier days; then the day is judged; then it is learnt from.
 *
 * @param evidence - All that is known of the meter. [code]
 * @param usage - Its usage by steps. [code]
 * @returns What was explained and what was seen. [code]
 */
export function observe(evidence: MeterEvidence, usage: StepUsage): Observation {
  const meter = observedMeter(evidence, usage);
  const seen: Observation = {
    meter,
    steady: noSteadyFlow(meter),
    zones: noZoneChanges(),
    delivery: noNoDelivery(),
    off: noOffSchedule(),
    wet: noWateredInRain(),
    unexplained: noUnexplainedUse(evidence.days),
    record: noRecordedFlows(),
    told: evidence.zones.map(() => false),
  };
  const usual = noUsualUse();
  let profile: IndoorProfile | null = null;
  for (let day = 0; day < evidence.days; day++) {
    const design = explainDay(meter, day, profile);
    closeDay(meter, day);
    moveUsualUse(meter, usual, day);
    judgeDay(seen, day, design, usual);
    for (const { told } of followedBy(seen)) keepMost(told);
    if (meter.kinds[day] === 'ran' && learnsToday(meter) && learn(seen, day)) followRecord(meter, seen.record, day);
    if (evidence.kind === 'mixed' && (day + 1) % INDOOR_EVERY === 0) profile = learnIndoorProfile(meter, day);
  }
  return seen;
}

/**
 * What is followed of a meter, each with what it told.
 *
 * @param seen - The observation. [code]
 * @returns The sightings of each detector. [code]
 */
export function followedBy(seen: Observation): readonly { readonly told: readonly Sighting[] }[] {
  const { steady, off, wet, zones, delivery, unexplained, record } = seen;
  return [steady, off, wet, zones, delivery, unexplained, record];
}

function judgeDay(seen: Observation, day: number, design: RunMinutes, usual: UsualUse): void {
  const { meter, zones, unexplained } = seen;
  if (followSteadyFlow(meter, seen.steady, day)) {
    // What the newest days said of zones has got another explanation.
    zones.learntUntil = Math.max(zones.learntUntil, day);
    if (seen.steady.open) becomesSteady(unexplained, seen.steady.open);
  }
  if (followOffSchedule(meter, seen.off, day, seen.steady.limit, usual.ofLate)) restartUnexplained(unexplained);
  followDelivery(meter, seen.delivery, day);
  followRain(meter, seen.wet, day);
  const isLeaking = seen.steady.open !== null;
  if (!isLeaking) judgeZones(seen, day, design);
  followUnexplained(meter, unexplained, day, usual);
  if (unexplained.open) meter.excused.fill(1, unexplained.since, day + 1);
}

function judgeZones({ meter, zones, unexplained }: Observation, day: number, design: RunMinutes): void {
  if (meter.kinds[day] !== 'ran' || meter.excused[day]) return;
  const wereOpen = zones.open.size;
  if (followZones(meter, zones, day, design)) restartUnexplained(unexplained);
  if (wereOpen + zones.open.size === 0) return;
  // A change that is open moves with each day that ran.
  for (let past = Math.max(0, day - LEARN_FROM); past <= day; past++) expectRuns(meter, past);
  readAgain(meter, unexplained, day);
}

function learnsToday({ ranDays }: ObservedMeter): boolean {
  return ranDays.length === 3 || ranDays.length % LEARN_EVERY === 0;
}

// The newest days, and of zones that hardly ran on them the newest on which they ran: a winter does not make a flow forgotten.
function learntDays({ runs, flows }: ObservedMeter, ranDays: readonly number[], until: number): readonly number[] {
  const from = Math.max(0, until - LEARN_FROM);
  const days = new Set(ranDays.slice(from, until));
  const ranOn = (zone: number, day: number) => (runs[day] ?? []).some((run) => run.zone === zone);
  for (let zone = 0; zone < flows.length; zone++) {
    let ran = [...days].filter((day) => ranOn(zone, day)).length;
    for (let at = from - 1; at >= 0 && ran < LEAST_OF_ZONE; at--) {
      const day = ranDays[at] ?? 0;
      if (days.has(day) || !ranOn(zone, day)) continue;
      days.add(day);
      ran += 1;
    }
  }
  return [...days].sort((a, b) => a - b);
}

function learn({ meter, zones, unexplained, told }: Observation, day: number): boolean {
  const ranDays = meter.ranDays.filter((past) => meter.excused[past] !== 1);
  // Later the flows are known, and a clock is refined together with them.
  if (ranDays.length < REFINE_EVERY) learnShifts(meter, ranDays.slice(-CLOCK_DAYS));
  const everywhere = zones.open.has(meter.flows.length);
  if (unexplained.open || everywhere || ranDays.length === 0) return false;
  const until = Math.max(Math.min(ranDays.length, LEAST_LEFT), ranDays.length - LEAVE_OUT);
  zones.learntDays = learntDays(meter, ranDays, until);
  const fixed = new Set(zones.open.keys());
  if (ranDays.length % REFINE_EVERY === 0) refineShifts(meter, zones.learntDays.slice(-REFINE_DAYS), fixed);
  // Flows by what is assumed of runs, so that few wild steps count as such; how sure they are, by how this meter's runs scatter.
  meter.scatter = 1;
  const fit = fitZoneFlows(meter, zones.learntDays, fixed);
  const learntBefore = zones.learntUntil === Number.POSITIVE_INFINITY ? -1 : zones.learntUntil;
  meter.flows.set(fit.litresPerMinute);
  meter.scatter = learnScatter(meter, zones.learntDays);
  meter.flowCovariance.set(meter.scatter < 1 ? fitZoneFlows(meter, zones.learntDays, fixed).covariance : fit.covariance);
  meter.flowPerMinuteOfShift.set(flowsByShift(meter, zones.learntDays, fixed));
  meter.pressureOfDay = learnPressure(meter, zones.learntDays);
  fit.told.forEach((value, zone) => {
    told[zone] = value;
  });
  zones.equations = ranDays.slice(-LEAVE_OUT - LEARN_EVERY).map((past) => dayEquations(meter, past));
  zones.learntUntil = Math.max(learntBefore, ranDays[until - 1] ?? day);
  expectAgain(meter, ranDays, day);
  readAgain(meter, unexplained, day);
  return true;
}

// The days that are judged by the flows just learnt.
function expectAgain(meter: ObservedMeter, ranDays: readonly number[], day: number): void {
  const first = ranDays[Math.max(0, ranDays.length - LEARN_FROM - LEAVE_OUT)] ?? 0;
  for (let past = Math.min(first, Math.max(0, day - LEARN_FROM - LEAVE_OUT)); past <= day; past++) expectRuns(meter, past);
}
