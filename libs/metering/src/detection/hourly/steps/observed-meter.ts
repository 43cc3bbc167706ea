import { DomainError } from '@rillbook/units/domain-error.js';
import type { EvidenceRun, MeterEvidence, StepUsage } from '../../evidence/meter-evidence.js';
import { type StepDays, stepDays } from './step-days.js';
import { valueAt } from './value-at.js';

/** Pressure moves all flows of a day by this share, while nothing is learnt. Common practice, no source. */
export const PRESSURE_OF_DAY = 0.03;

/** What a day's runs and usage say together. 'not known': no settings, or too little usage; 'skipped': runs without water. */
export type DayKind = 'not known' | 'at rest' | 'ran' | 'skipped';

/**
 * One meter as an online observer knows it: what is learnt changes as days go by, and never by a later day.
 *
 * By step: `expected` litres of the runs at the flows believed on that day (NaN where a flow is not known), `indoor` litres,
 * `claimed` litres that an open finding already accounts for, `touched` where a run may have passed water, its clock's doubt included.
 */
export interface ObservedMeter {
  readonly evidence: MeterEvidence;
  readonly usage: StepUsage;
  readonly days: StepDays;
  readonly runs: readonly (readonly ObservedRun[])[];
  readonly controllers: readonly (string | null)[];
  readonly controllerOf: Int32Array;
  readonly shiftMinutes: Float64Array;
  shiftsLearnt: boolean;
  readonly flows: Float64Array;
  /** Covariance of the flows believed, by rows. */
  readonly flowCovariance: Float64Array;
  /** By how much each of the flows believed was learnt too high for each minute that clocks are later than believed. [L/min per min] */
  readonly flowPerMinuteOfShift: Float64Array;
  readonly factors: Float64Array;
  readonly factorOfDay: Float64Array;
  readonly expected: Float64Array;
  readonly indoor: Float64Array;
  readonly indoorSd: Float64Array;
  readonly claimed: Float64Array;
  readonly touched: Uint8Array;
  readonly kinds: DayKind[];
  readonly ranDays: number[];
  readonly usedLitres: Float64Array;
  /** 1 on days of which nothing is learnt: an open finding is in their volumes, or a controller held back its water. 2 where clocks change: no zone is judged. */
  readonly excused: Uint8Array;
  steadyLPerMin: number;
  /** How much runs scatter, as share of what is assumed while nothing is learnt. */
  scatter: number;
  /** Pressure moves all flows of a day by this share. */
  pressureOfDay: number;
  /** Minutes of days by the shifts for which they were computed. */
  readonly designs: (KnownDesign | undefined)[];
}

/** The minutes that each zone ran in each step of a day, and the steps that a run may have touched. */
export interface RunMinutes {
  readonly fromStep: number;
  readonly steps: number;
  /** By step and zone, steps · zones. */
  readonly minutes: Float64Array;
  readonly touched: Uint8Array;
}

interface KnownDesign {
  readonly design: RunMinutes;
  readonly shiftsLearnt: boolean;
  readonly shiftMinutes: Float64Array;
}

/** A run by the place of its zone. */
export interface ObservedRun {
  readonly zone: number;
  readonly begin: number;
  readonly end: number;
}

/**
 * A meter of which nothing is learnt yet: flows are those on record.
 *
 * @param evidence - All that is known of the meter. [code]
 * @param usage - Its usage by steps. [code]
 * @returns The meter before its first day. [code]
 * @throws {DomainError} `USAGE_STEPS_OUT_OF_DOMAIN` when a step is not above zero or longer than an hour.
 */
export function observedMeter(evidence: MeterEvidence, usage: StepUsage): ObservedMeter {
  if (!(usage.stepMinutes > 0 && usage.stepMinutes <= 60))
    throw new DomainError('USAGE_STEPS_OUT_OF_DOMAIN', { stepMinutes: usage.stepMinutes });
  const { zones, days } = evidence;
  const steps = usage.litres.length;
  const controllers = [...new Set(zones.map(({ controllerId }) => controllerId))];
  const flows = Float64Array.from(zones, ({ flowLPerMin }) => flowLPerMin ?? Number.NaN);
  return {
    evidence,
    usage,
    days: stepDays(evidence, usage),
    runs: runsByDay(evidence),
    controllers,
    controllerOf: Int32Array.from(zones, ({ controllerId }) => controllers.indexOf(controllerId)),
    shiftMinutes: new Float64Array(controllers.length),
    shiftsLearnt: false,
    flows,
    flowCovariance: covarianceOnRecord(evidence),
    flowPerMinuteOfShift: new Float64Array(zones.length),
    factors: new Float64Array(zones.length).fill(1),
    factorOfDay: new Float64Array(days * zones.length).fill(1),
    expected: new Float64Array(steps),
    indoor: new Float64Array(steps),
    indoorSd: new Float64Array(steps),
    claimed: new Float64Array(steps),
    touched: new Uint8Array(steps),
    kinds: [],
    ranDays: [],
    usedLitres: new Float64Array(days).fill(Number.NaN),
    excused: new Uint8Array(days),
    steadyLPerMin: 0,
    scatter: 1,
    pressureOfDay: PRESSURE_OF_DAY,
    designs: [],
  };
}

function covarianceOnRecord({ zones }: MeterEvidence): Float64Array {
  const covariance = new Float64Array(zones.length ** 2);
  zones.forEach(({ flowLPerMin, flowRelativeSd }, zone) => {
    covariance[zone * (zones.length + 1)] = ((flowLPerMin ?? Number.NaN) * flowRelativeSd) ** 2;
  });
  return covariance;
}

function runsByDay({ runs, zones, days, midnights }: MeterEvidence): readonly (readonly ObservedRun[])[] {
  const placeOf = new Map(zones.map(({ zoneId }, place) => [zoneId, place]));
  const byDay: ObservedRun[][] = Array.from({ length: days }, () => []);
  const ordered = runs.every((run, at) => at === 0 || (runs[at - 1] as EvidenceRun).begin <= run.begin)
    ? runs
    : [...runs].sort((a, b) => a.begin - b.begin);
  let day = 0;
  for (const { zoneId, begin, end } of ordered) {
    while (day < days - 1 && begin >= valueAt(midnights, day + 1)) day++;
    const zone = placeOf.get(zoneId);
    if (zone !== undefined) byDay[day]?.push({ zone, begin, end });
  }
  return byDay;
}
