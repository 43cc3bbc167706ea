import type { ObservedMeter } from '../steps/observed-meter.js';
import { mostShiftMinutes } from '../steps/run-minutes.js';
import { fitZoneFlows } from './fit-zone-flows.js';

/** Minutes about the shift of before that are tried. */
const TRIED_MINUTES = 4;

/** Another shift is better when its fit leaves at most this share of the squares. Common practice, no source. */
const BETTER = 0.8;

/**
 * Refines the shift of each controller's clock together with the flows: a clock that is off by a minute looks like a first zone with less and a last
 * zone with more, so that neither can be learnt by itself.
 *
 * @param meter - The meter; its shifts are set. [code]
 * @param days - Days on which runs passed water, all of them in the past. [–]
 * @param fixed - Zones whose flow is not asked. [–]
 */
export function refineShifts(meter: ObservedMeter, days: readonly number[], fixed: ReadonlySet<number>): void {
  // By what is assumed of runs: what was learnt of their scatter was learnt by the clocks that are in question.
  const { scatter } = meter;
  meter.scatter = 1;
  for (let controller = 0; controller < meter.shiftMinutes.length; controller++) {
    const before = meter.shiftMinutes[controller] ?? 0;
    let [best, least] = [before, BETTER * fitZoneFlows(meter, days, fixed).misfit];
    for (let minutes = -TRIED_MINUTES; minutes <= TRIED_MINUTES; minutes++) {
      if (minutes === 0 || Math.abs(before + minutes) > mostShiftMinutes) continue;
      meter.shiftMinutes[controller] = before + minutes;
      const { misfit } = fitZoneFlows(meter, days, fixed);
      if (misfit < least) [best, least] = [before + minutes, misfit];
    }
    meter.shiftMinutes[controller] = best;
  }
  meter.scatter = scatter;
}
