import { waterClusters } from '../runs/water-clusters.js';
import type { ObservedMeter } from '../steps/observed-meter.js';
import { runMinutes } from '../steps/run-minutes.js';
import { valueAt } from '../steps/value-at.js';
import { litresBack } from './litres-back.js';

/**
 * Litres of a day that neither runs nor indoor use nor open findings explain, and those of its runs. What a zone that lacked water passes again is its runs'.
 *
 * @param meter - The meter. [code]
 * @param day - The day, from 0. [–]
 * @returns Litres of the rest, NaN where nothing of the day is known, and litres expected of the runs. [L]
 */
export function dayOf(meter: ObservedMeter, day: number): readonly [number, number] {
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
  const back = litresBack(meter, day);
  return [known > 0 ? ((rest - back - onceLitres(meter, day)) * (until - from)) / known : Number.NaN, runs + back];
}

/**
 * Doubt of a day's runs by that of the zones' flows: √(mᵀ P m).
 *
 * @param meter - The meter. [code]
 * @param day - The day, from 0. [–]
 * @returns Standard deviation. [L]
 */
export function sdByFlows(meter: ObservedMeter, day: number): number {
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

/**
 * Litres of indoor use on a day.
 *
 * @param meter - The meter. [code]
 * @param day - The day, from 0. [–]
 * @returns Litres; NaN while they are not learnt. [L]
 */
export function indoorLitres(meter: ObservedMeter, day: number): number {
  const { days, indoor } = meter;
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
