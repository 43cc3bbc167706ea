import type { ObservedMeter } from '../steps/observed-meter.js';
import { valueAt } from '../steps/value-at.js';

/** Minutes of a zone on two days are the same within half a minute: timers count minutes. */
const SAME_MINUTES = 0.5;

/** On so many of the days from which flows were learnt a zone must have run as long. Common practice, no source. */
const LEAST_DAYS = 4;

/**
 * Whether the zones of a day ran as long as on days from which their flows were learnt. Then what is off in the same way on each day, such as a
 * clock by a minute, is part of the flows learnt and cancels; else it does not.
 *
 * @param meter - The meter. [code]
 * @param learntDays - Days from which flows were learnt. [–]
 * @param day - The day, from 0. [–]
 * @returns True when every zone that ran, ran as long on at least four of them. [–]
 */
export function sameDesign(meter: ObservedMeter, learntDays: readonly number[], day: number): boolean {
  const now = minutesOfDay(meter, day);
  const past = learntDays.map((one) => minutesOfDay(meter, one));
  return now.every(
    (minutes, zone) => minutes === 0 || past.filter((then) => Math.abs(valueAt(then, zone) - minutes) <= SAME_MINUTES).length >= LEAST_DAYS,
  );
}

function minutesOfDay(meter: ObservedMeter, day: number): Float64Array {
  const minutes = new Float64Array(meter.flows.length);
  for (const { zone, begin, end } of meter.runs[day] ?? []) minutes[zone] = valueAt(minutes, zone) + end - begin;
  return minutes;
}
