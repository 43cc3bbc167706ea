import type { ObservedMeter } from './observed-meter.js';
import { quantile } from './robust-spread.js';
import { mostShiftMinutes, overlap, runsNear } from './run-minutes.js';
import { valueAt } from './value-at.js';

/** Grid of the search, and the finer one about the best: no more than a few shifts are tried. [min] */
const GRID_MINUTES = 5;
const FINE_MINUTES = 1;

/** Another shift takes the place of the one of before when it leaves at most this share of its squares: the best moves a little by chance. */
const BETTER = 0.9;

/** A register is coarse from this share of what passes in a step that runs touch. Common practice, no source. */
const COARSE = 0.25;

/** A shift is believed when it leaves at most this share of the squares that no shift leaves: else the clock is taken as right. */
const CONVINCING = 0.8;

/**
 * Learns by how many minutes each controller's clock is off: the shift at which the runs explain the usage best.
 *
 * min over s of Σ (usage − others − a · expected(s))², a ≥ 0, one controller after the other, s from −30 to 30 min
 *
 * @param meter - The meter; its shifts are set. [code]
 * @param days - Days on which runs passed water, all of them in the past. [–]
 */
export function learnShifts(meter: ObservedMeter, days: readonly number[]): void {
  meter.shiftsLearnt = true;
  if (isCoarse(meter, days)) return;
  meter.controllers.forEach((_, controller) => {
    const before = meter.shiftMinutes[controller] ?? 0;
    const none = squaresLeft(meter, days, controller, 0);
    // The shift of before is kept unless another is clearly better.
    const own = before === 0 ? none : squaresLeft(meter, days, controller, before);
    const kept = Math.min(CONVINCING * none, before === 0 ? none : BETTER * own) - leastGain(meter);
    let [best, least] = [before, kept];
    const tryOne = (shift: number) => {
      const left = squaresLeft(meter, days, controller, shift);
      if (left < least) [best, least] = [shift, left];
    };
    for (let shift = -mostShiftMinutes; shift <= mostShiftMinutes; shift += GRID_MINUTES) tryOne(shift);
    const about = best;
    if (about !== 0)
      for (let fine = 1 - GRID_MINUTES; fine < GRID_MINUTES; fine += FINE_MINUTES)
        tryOne(Math.max(-mostShiftMinutes, Math.min(mostShiftMinutes, about + fine)));
    meter.shiftMinutes[controller] = best;
  });
}

// Less than a step of the register is nothing that a shift explains: runs within one step of usage are explained by many of them alike.
function leastGain({ usage }: ObservedMeter): number {
  return (usage.resolutionLitres ?? 0) ** 2;
}

// Where the register counts in steps as large as what a run passes, its steps fall anywhere and no shift can be told.
function isCoarse({ expected, usage, days: { firstStep } }: ObservedMeter, days: readonly number[]): boolean {
  const litres = days
    .flatMap((day) => [...expected.subarray(valueAt(firstStep, day), valueAt(firstStep, day + 1))])
    .filter((own) => own > 0);
  return litres.length > 0 && (usage.resolutionLitres ?? 0) > COARSE * quantile(litres, 0.5);
}

function squaresLeft(meter: ObservedMeter, days: readonly number[], controller: number, shift: number): number {
  const sums = { uu: 0, ue: 0, ee: 0 };
  for (const day of days) addDay(meter, day, [controller, shift], sums);
  const scale = sums.ee > 0 ? Math.max(0, sums.ue / sums.ee) : 0;
  return sums.uu - 2 * scale * sums.ue + scale * scale * sums.ee;
}

function addDay(
  meter: ObservedMeter,
  day: number,
  [controller, shift]: readonly [number, number],
  sums: { uu: number; ue: number; ee: number },
): void {
  const { usage, days, indoor, claimed } = meter;
  const from = valueAt(days.firstStep, day);
  const [own, rest] = expectedOf(meter, day, controller, shift);
  for (let step = 0; step < own.length; step++) {
    const used = valueAt(usage.litres, from + step) - valueAt(rest, step) - valueAt(indoor, from + step) - valueAt(claimed, from + step);
    if (Number.isNaN(used)) continue;
    const expected = valueAt(own, step);
    sums.uu += used * used;
    sums.ue += used * expected;
    sums.ee += expected * expected;
  }
}

// Litres of the controller's runs by step, moved by the shift, and of the others'.
function expectedOf(meter: ObservedMeter, day: number, controller: number, shift: number): readonly [Float64Array, Float64Array] {
  const { usage, days } = meter;
  const from = valueAt(days.firstStep, day);
  const steps = valueAt(days.firstStep, day + 1) - from;
  const own = new Float64Array(steps);
  const rest = new Float64Array(steps);
  const begin = usage.firstMinute + from * usage.stepMinutes;
  for (const run of runsNear(meter, day)) {
    const of = meter.controllerOf[run.zone] ?? 0;
    const moved = (of === controller ? shift : valueAt(meter.shiftMinutes, of)) - begin;
    const into = of === controller ? own : rest;
    const flow = valueAt(meter.flows, run.zone) * (meter.factors[run.zone] ?? 1);
    overlap(usage.stepMinutes, steps, run.begin + moved, run.end + moved, (step, minutes) => {
      into[step] = valueAt(into, step) + (Number.isNaN(flow) ? 1 : flow) * minutes;
    });
  }
  return [own, rest];
}
