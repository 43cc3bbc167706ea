import type { ObservedMeter } from '../steps/observed-meter.js';
import { valueAt } from '../steps/value-at.js';

/** A step is hot from this share of the smallest zone's flow: less is a drip, a hose or a leak. Common practice, no source. */
const SHARE_OF_ZONE = 0.25;
/** A run of so many minutes must be seen, though it fills a longer step in part only. Common practice, no source. [min] */
const SHORT_RUN_MINUTES = 15;
/** On a mixed meter only water well above what people use is an irrigation's. */
const SHARE_OF_ZONE_MIXED = 0.5;
const BEYOND_INDOOR_SDS = 4;
/** Steps of the register that one step of usage must make. */
const STEPS_OF_REGISTER = 2;

/** Water that passed in one piece outside of every run. */
export interface WaterCluster {
  readonly day: number;
  readonly fromStep: number;
  /** One past the last. */
  readonly untilStep: number;
  readonly litres: number;
  readonly clockMinute: number;
  /** Whether it began and ended beside steps that are known, free of runs and without such water. */
  readonly beganAlone: boolean;
  readonly endedAlone: boolean;
}

/**
 * Water of a day in one piece, outside of every run.
 *
 * @param meter - The meter. [code]
 * @param day - The day, from 0. [–]
 * @param least - Least flow that counts. [L/min]
 * @returns The clusters in order of time; one that reaches into the next day ends with this one. [code]
 */
export function waterClusters(meter: ObservedMeter, day: number, least: number): readonly WaterCluster[] {
  const [from, until] = [valueAt(meter.days.firstStep, day), valueAt(meter.days.firstStep, day + 1)];
  const hot = Math.max(least * meter.usage.stepMinutes, STEPS_OF_REGISTER * (meter.usage.resolutionLitres ?? 0));
  const clusters: WaterCluster[] = [];
  for (let step = from; step < until; step++) {
    if (!isHot(meter, step, hot)) continue;
    let end = step + 1;
    while (end < until && isHot(meter, end, hot)) end++;
    const [beganAlone, endedAlone] = [step > 0 && isCool(meter, step - 1, hot), end < until && isCool(meter, end, hot)];
    const clockMinute = valueAt(meter.days.clockMinute, step);
    clusters.push({ day, fromStep: step, untilStep: end, litres: litresAround(meter, step, end), clockMinute, beganAlone, endedAlone });
    step = end;
  }
  return clusters;
}

/**
 * Least mean flow of a step that is like an irrigation's: a quarter of the smallest zone's in a run of a quarter of an hour, half of it where people use
 * water of the same meter.
 *
 * @param meter - The meter. [code]
 * @param limit - Smallest flow that the meter shows. [L/min]
 * @returns The flow. [L/min]
 */
export function leastRunFlow(meter: ObservedMeter, limit: number): number {
  const { evidence, flows, usage } = meter;
  const known = flows.filter((flow) => flow > 0);
  const share = evidence.kind === 'mixed' ? SHARE_OF_ZONE_MIXED : SHARE_OF_ZONE;
  const filled = evidence.kind === 'mixed' ? 1 : Math.min(1, SHORT_RUN_MINUTES / usage.stepMinutes);
  const ofZone = known.length ? share * filled * known.reduce((least, flow) => Math.min(least, flow)) : 0;
  return Math.max(limit, ofZone);
}

function excess({ usage, indoor, claimed, touched }: ObservedMeter, step: number): number {
  if (touched[step]) return Number.NaN;
  return (usage.litres[step] ?? Number.NaN) - valueAt(indoor, step) - valueAt(claimed, step);
}

function isHot(meter: ObservedMeter, step: number, hot: number): boolean {
  return excess(meter, step) >= Math.max(hot, BEYOND_INDOOR_SDS * valueAt(meter.indoorSd, step));
}

function isCool(meter: ObservedMeter, step: number, hot: number): boolean {
  return excess(meter, step) < Math.max(hot, BEYOND_INDOOR_SDS * valueAt(meter.indoorSd, step));
}

// The first and the last step of a run are filled in part: what stands beside a cluster belongs to it.
function litresAround(meter: ObservedMeter, from: number, until: number): number {
  let litres = 0;
  for (let step = Math.max(0, from - 1); step <= until; step++) litres += Math.max(0, excess(meter, step) || 0);
  return litres;
}
