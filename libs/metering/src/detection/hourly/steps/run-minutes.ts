import type { ObservedMeter, ObservedRun, RunMinutes } from './observed-meter.js';
import { valueAt } from './value-at.js';

/** Litres pass the meter this long after a valve is told to close: slow valves and the fill of drained pipe. Common practice, no source. [min] */
const DRAIN_MINUTES = 5;

/** A clock is taken to be this near after its shift is learnt: the grid of the search, and this share of a step, within which usage hardly tells it. Common practice, no source. [min] */
const SHIFT_DOUBT_MINUTES = 5;
const DOUBT_OF_STEP = 0.2;

/** A clock may be off by this much while nothing is learnt; larger shifts are an off-schedule run. [min] */
export const mostShiftMinutes = 30;

/**
 * Minutes of each zone in each step of a day, by the clocks' learnt shifts; not to be changed, since they are kept while the shifts stay.
 *
 * @param meter - The meter as it is known. [code]
 * @param day - The day, from 0. [–]
 * @returns Minutes and touched steps; a run of the day before reaches into this one. [min]
 */
export function runMinutes(meter: ObservedMeter, day: number): RunMinutes {
  const known = meter.designs[day];
  if (known && known.shiftsLearnt === meter.shiftsLearnt && known.shiftMinutes.every((shift, at) => shift === meter.shiftMinutes[at]))
    return known.design;
  const design = designOf(meter, day);
  meter.designs[day] = { design, shiftsLearnt: meter.shiftsLearnt, shiftMinutes: meter.shiftMinutes.slice() };
  return design;
}

function designOf(meter: ObservedMeter, day: number): RunMinutes {
  const fromStep = meter.days.firstStep[day] ?? 0;
  const steps = (meter.days.firstStep[day + 1] ?? fromStep) - fromStep;
  const zones = meter.flows.length;
  const minutes = new Float64Array(steps * zones);
  const touched = new Uint8Array(steps);
  const begin = meter.usage.firstMinute + fromStep * meter.usage.stepMinutes;
  for (const run of runsNear(meter, day)) {
    const shift = meter.shiftMinutes[meter.controllerOf[run.zone] ?? 0] ?? 0;
    touch(meter, touched, run.begin + shift - begin, run.end + shift - begin);
    overlap(meter.usage.stepMinutes, steps, run.begin + shift - begin, run.end + shift - begin, (step, inStep) => {
      const at = step * zones + run.zone;
      minutes[at] = valueAt(minutes, at) + inStep;
    });
  }
  return { fromStep, steps, minutes, touched };
}

function touch(meter: ObservedMeter, touched: Uint8Array, from: number, until: number): void {
  const { stepMinutes } = meter.usage;
  const doubt = meter.shiftsLearnt ? Math.max(SHIFT_DOUBT_MINUTES, DOUBT_OF_STEP * stepMinutes) : mostShiftMinutes;
  const first = Math.max(0, Math.floor((from - doubt) / stepMinutes));
  const last = Math.min(touched.length, Math.ceil((until + doubt + DRAIN_MINUTES) / stepMinutes));
  for (let step = first; step < last; step++) touched[step] = 1;
}

/**
 * Runs that may reach into a day: its own, and those of the days beside it.
 *
 * @param meter - The meter as it is known. [code]
 * @param day - The day, from 0. [–]
 * @returns The runs, in order of time. [code]
 */
export function runsNear(meter: ObservedMeter, day: number): readonly ObservedRun[] {
  return [...(meter.runs[day - 1] ?? []), ...(meter.runs[day] ?? []), ...(meter.runs[day + 1] ?? []).slice(0, 1)];
}

/**
 * Visits the steps that a span of time overlaps.
 *
 * @param stepMinutes - Length of a step. [min]
 * @param steps - Number of steps, from minute 0. [–]
 * @param from - Begin of the span, from the begin of the first step. [min]
 * @param until - Its end. [min]
 * @param visit - Called with the step and the minutes of the span within it. [code]
 */
export function overlap(
  stepMinutes: number,
  steps: number,
  from: number,
  until: number,
  visit: (step: number, minutes: number) => void,
): void {
  const last = Math.min(steps, Math.ceil(until / stepMinutes));
  for (let step = Math.max(0, Math.floor(from / stepMinutes)); step < last; step++) {
    visit(step, Math.min(until, (step + 1) * stepMinutes) - Math.max(from, step * stepMinutes));
  }
}
