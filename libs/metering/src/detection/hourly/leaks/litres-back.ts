import type { ObservedMeter } from '../steps/observed-meter.js';
import { runMinutes } from '../steps/run-minutes.js';
import { valueAt } from '../steps/value-at.js';

/**
 * Litres of a day beyond what is expected of zones that are known to pass too little, as far as they lack: first of all such a zone is mended.
 *
 * min(Σ (litres − expected), Σ minutes · flow · (1 − factor)) over the steps in which those zones ran, at least 0.
 *
 * @param meter - The meter. [code]
 * @param day - The day, from 0. [–]
 * @returns Litres; zero while no zone is known to lack any. [L]
 */
export function litresBack(meter: ObservedMeter, day: number): number {
  const { usage, expected, indoor, claimed, flows, factorOfDay } = meter;
  const zones = flows.length;
  const factors = factorOfDay.subarray(day * zones, (day + 1) * zones);
  if (factors.every((factor) => factor >= 1)) return 0;
  const lackOf = flows.map((flow, zone) => flow * Math.max(0, 1 - valueAt(factors, zone)));
  const { fromStep, steps, minutes } = runMinutes(meter, day);
  let [lacked, off] = [0, 0];
  for (let step = 0; step < steps; step++) {
    const lack = lackOf.reduce((sum, own, zone) => sum + own * valueAt(minutes, step * zones + zone), 0);
    const at = fromStep + step;
    const beyond = valueAt(usage.litres, at) - valueAt(expected, at) - valueAt(indoor, at) - valueAt(claimed, at);
    if (!(lack > 0) || Number.isNaN(beyond)) continue;
    lacked += lack;
    off += beyond;
  }
  return Math.max(0, Math.min(lacked, off));
}
