import type { EvidenceRun, EvidenceZone, MeterEvidence } from '@rillbook/metering/detection/evidence/meter-evidence.js';
import { observedMeter, type ObservedMeter } from '@rillbook/metering/detection/hourly/steps/observed-meter.js';

/** 2026-06-01, a Monday. */
export const FIRST_DAY = 20_605;
export const HOURS = 24;
export const MINUTES = 1440;

/** What a small meter is given; the rest is plain: an irrigation meter read by the hour to the litre, dry days, nothing passed. */
export interface Given {
  readonly days?: number;
  readonly kind?: 'irrigation' | 'mixed';
  /** Flows of zones z1, z2 …, each on controller c1 unless said otherwise. [L/min] */
  readonly flows?: readonly (number | null)[];
  readonly controllers?: readonly (string | null)[];
  /** Zone from 1, day from 0, clock minute at which it begins, minutes. */
  readonly runs?: readonly (readonly [zone: number, day: number, clockMinute: number, minutes: number])[];
  /** By day and hour. [L] */
  readonly litres?: (day: number, hour: number) => number;
  readonly resolution?: number | null;
  readonly evidence?: Partial<MeterEvidence>;
}

/** A meter that a calculator can follow, before its first day; clocks are taken to be right. */
export function handMeter(given: Given): ObservedMeter {
  const { days = 3, kind = 'irrigation', flows = [], controllers = [], runs = [], litres = () => 0, resolution = 1 } = given;
  const usage = {
    firstMinute: 0,
    stepMinutes: 60,
    litres: Float64Array.from({ length: days * HOURS }, (_, step) => litres(Math.floor(step / HOURS), step % HOURS)),
    resolutionLitres: resolution,
  };
  const zones = flows.map(
    (flowLPerMin, at): EvidenceZone => ({
      zoneId: `z${at + 1}`,
      controllerId: controllers[at] === undefined ? 'c1' : controllers[at],
      station: at + 1,
      flowLPerMin,
      flowRelativeSd: 0.1,
    }),
  );
  const evidence: MeterEvidence = {
    meterId: 'm1',
    kind,
    indoorLitresPerDay: null,
    sizeMm: null,
    resolutionLitres: null,
    firstDay: FIRST_DAY,
    days,
    midnights: Float64Array.from({ length: days + 1 }, (_, day) => day * MINUTES),
    rainMm: new Float64Array(days),
    etoMm: new Float64Array(days).fill(5),
    programmedLitres: new Float64Array(days),
    programmedIsEstimate: new Uint8Array(days),
    neededLitres: new Float64Array(days),
    programmedRelativeSd: 0.1,
    zones,
    runs: runs
      .map(([zone, day, clock, minutes]): EvidenceRun => {
        const begin = day * MINUTES + clock;
        return { zoneId: `z${zone}`, program: 'A', begin, end: begin + minutes };
      })
      .sort((a, b) => a.begin - b.begin),
    intervals: [],
    usage,
    pricePerLitre: 0.01,
    ...given.evidence,
  };
  return Object.assign(observedMeter(evidence, usage), { shiftsLearnt: true });
}
