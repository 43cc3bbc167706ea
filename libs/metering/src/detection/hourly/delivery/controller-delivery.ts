import type { ObservedMeter } from '../steps/observed-meter.js';
import { runMinutes } from '../steps/run-minutes.js';
import { valueAt } from '../steps/value-at.js';

/** A controller is judged by steps in which it alone runs, where these are at least this share of its water. Common practice, no source. */
const LEAST_ALONE = 0.3;
/** Less than this share of what is expected is no water, as of a whole day. Common practice, no source. */
const SKIPPED_SHARE = 0.2;
/** Steps of the register that must be missing. */
const STEPS_MISSING = 3;

/**
 * Controllers of a meter with several whose runs of a day passed no water, though others' did.
 *
 * @param meter - The meter. [code]
 * @param day - The day, from 0. [–]
 * @returns Places of the controllers, and the litres that were expected of each. [L]
 */
export function controllersWithoutWater(meter: ObservedMeter, day: number): ReadonlyMap<number, number> {
  const without = new Map<number, number>();
  if (meter.controllers.length < 2) return without;
  const sums = meter.controllers.map(() => ({ whole: 0, alone: 0, passed: 0 }));
  const design = runMinutes(meter, day);
  for (let step = 0; step < design.steps; step++) addStep(meter, day, { design, step }, sums);
  const least = STEPS_MISSING * (meter.usage.resolutionLitres ?? 0);
  sums.forEach(({ whole, alone, passed }, controller) => {
    const isTold = alone >= LEAST_ALONE * whole && alone - passed >= least;
    if (isTold && passed < SKIPPED_SHARE * alone) without.set(controller, whole);
  });
  return without;
}

interface Sums {
  whole: number;
  alone: number;
  passed: number;
}

function addStep(
  meter: ObservedMeter,
  day: number,
  { design, step }: { readonly design: ReturnType<typeof runMinutes>; readonly step: number },
  sums: readonly Sums[],
): void {
  const zones = meter.flows.length;
  const expected = new Float64Array(sums.length);
  for (let zone = 0; zone < zones; zone++) {
    const minutes = valueAt(design.minutes, step * zones + zone);
    if (minutes <= 0) continue;
    const at = meter.controllerOf[zone] ?? 0;
    expected[at] = valueAt(expected, at) + minutes * valueAt(meter.flows, zone) * valueAt(meter.factorOfDay, day * zones + zone);
  }
  const running = [...expected.keys()].filter((controller) => valueAt(expected, controller) > 0);
  running.forEach((controller) => {
    (sums[controller] as Sums).whole += valueAt(expected, controller);
  });
  const [only] = running;
  const at = design.fromStep + step;
  const passed = valueAt(meter.usage.litres, at) - valueAt(meter.indoor, at) - valueAt(meter.claimed, at);
  if (running.length !== 1 || only === undefined || Number.isNaN(passed)) return;
  (sums[only] as Sums).alone += valueAt(expected, only);
  (sums[only] as Sums).passed += passed;
}
