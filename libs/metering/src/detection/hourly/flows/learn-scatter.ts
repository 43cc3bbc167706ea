import type { ObservedMeter } from '../steps/observed-meter.js';
import { quantile } from '../steps/robust-spread.js';
import { runMinutes } from '../steps/run-minutes.js';
import { valueAt } from '../steps/value-at.js';
import { otherVariance, runVariance } from './step-variance.js';

/** Median of the square of a normal quantity of variance 1. */
const MEDIAN_SQUARE = 0.455;
/** Fewer days, from which flows were learnt as well, fit better than days to come will. */
const LEAST_DAYS = 18;
/** Fewer steps do not say how much runs scatter. */
const LEAST_STEPS = 30;
/**
 * Runs are never taken to scatter by less than this share of what is assumed at first, on a mixed meter by what is assumed: people draw water beside
 * them. Common practice, no source.
 */
const LEAST_SCALE = { irrigation: 0.5, mixed: 1 } as const;

/**
 * How much a meter's runs scatter about what is expected, as share of what is assumed while nothing is learnt: the meter's own days say it.
 *
 * scale² = median of (residual − day's pressure)² / variance assumed of the runs, over the median of χ² with one degree of freedom
 *
 * @param meter - The meter, its flows just learnt. [code]
 * @param days - Days on which runs passed water, from which flows were learnt. [–]
 * @returns Share, at most 1; 1 where too few steps say it. [–]
 */
export function learnScatter(meter: ObservedMeter, days: readonly number[]): number {
  if (days.length < LEAST_DAYS) return 1;
  const squares = days.flatMap((day) => squaresOf(meter, day));
  if (squares.length < LEAST_STEPS) return 1;
  return Math.min(1, Math.max(LEAST_SCALE[meter.evidence.kind], Math.sqrt(quantile(squares, 0.5) / MEDIAN_SQUARE)));
}

interface StepResidual {
  readonly residual: number;
  readonly expected: number;
  readonly assumed: number;
  readonly other: number;
}

function squaresOf(meter: ObservedMeter, day: number): readonly number[] {
  const steps = residualsOf(meter, day);
  let [together, weight] = [0, 0];
  for (const { residual, expected, assumed, other } of steps) {
    together += (residual * expected) / (assumed + other);
    weight += expected ** 2 / (assumed + other);
  }
  const pressure = weight > 0 ? together / weight : 0;
  // A day of few steps is explained by its pressure alone.
  const left = steps.length > 1 ? steps.length / (steps.length - 1) : Number.NaN;
  return steps
    .filter(({ assumed, other }) => other <= assumed / 2 && !Number.isNaN(left))
    .map(({ residual, expected, assumed, other }) => (left * Math.max(0, (residual - pressure * expected) ** 2 - other)) / assumed);
}

function residualsOf(meter: ObservedMeter, day: number): readonly StepResidual[] {
  const design = runMinutes(meter, day);
  const zones = meter.flows.length;
  const found: StepResidual[] = [];
  for (let step = 0; step < design.steps; step++) {
    let [minutes, expected] = [0, 0];
    for (let zone = 0; zone < zones; zone++) {
      const own = valueAt(design.minutes, step * zones + zone);
      if (own === 0) continue;
      minutes += own;
      expected += own * (meter.flows[zone] ?? Number.NaN) * (meter.factorOfDay[day * zones + zone] ?? 1);
    }
    const at = design.fromStep + step;
    const residual = (meter.usage.litres[at] ?? Number.NaN) - valueAt(meter.indoor, at) - valueAt(meter.claimed, at) - expected;
    if (!(minutes > 0) || Number.isNaN(residual) || expected <= 0) continue;
    found.push({ residual, expected, assumed: runVariance(meter, expected, minutes), other: otherVariance(meter, at) });
  }
  return found;
}
