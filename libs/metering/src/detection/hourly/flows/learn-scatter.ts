import { type ObservedMeter, PRESSURE_OF_DAY } from '../steps/observed-meter.js';
import { quantile } from '../steps/robust-spread.js';
import { runMinutes } from '../steps/run-minutes.js';
import { valueAt } from '../steps/value-at.js';
import { dayEquations, flowsAndClock } from './day-equations.js';
import { timesVector } from '../../../statistics/square-matrices.kernel.js';
import { otherVariance, runVariance } from './step-variance.js';

/** Median of the square of a normal quantity of variance 1. */
const MEDIAN_SQUARE = 0.455;
/** Fewer days, from which flows were learnt as well, fit better than days to come will. */
const LEAST_DAYS = 18;
/** Fewer steps do not say how much runs scatter. */
const LEAST_STEPS = 30;
/** Runs are never taken to scatter by less than this share of what is assumed at first; on a mixed meter people draw water beside them. Common practice, no source. */
const LEAST_SCALE = { irrigation: 0.3, mixed: 0.5 } as const;
/** What is assumed counts as so many steps, or days, that say it. Common practice, no source. */
const ASSUMED_COUNT = 8;
/** A step whose register is coarse beside its runs says less of them: its share of variance that is of runs, squared, by runs of this variance. */
const USUAL_SQUARE = 0.1;
/** Nine of ten squares of a normal quantity of variance 1 are below. */
const TAIL = 0.9;
const TAIL_SQUARE = 2.706;

/**
 * How much a meter's runs scatter about what is expected, as share of what is assumed while nothing is learnt: the meter's own days say it.
 *
 * scale² = (n · s² + 8) / (n + 8); s² = median of (residual − day's pressure)² less that of the register, over the variance assumed of the runs and the
 * median of χ² with one degree of freedom; n = Σ (0.1 v / (0.1 v + other))², the steps that tell it, since those of a coarse register do not
 *
 * @param meter - The meter, its flows just learnt. [code]
 * @param days - Days on which runs passed water, from which flows were learnt. [–]
 * @returns Share, at most 1; 1 where too few steps say it. [–]
 * @source A prior that counts as some observations: Gelman et al. (2013), Bayesian Data Analysis, 2.6; from memory.
 */
export function learnScatter(meter: ObservedMeter, days: readonly number[]): number {
  if (days.length < LEAST_DAYS) return 1;
  const steps = days.flatMap((day) => squaresOf(meter, day));
  if (steps.length < LEAST_STEPS) return 1;
  const own =
    quantile(
      steps.map(({ square }) => square),
      0.5,
    ) / MEDIAN_SQUARE;
  const count = steps.reduce((sum, { says }) => sum + says, 0);
  return Math.min(1, Math.max(LEAST_SCALE[meter.evidence.kind], Math.sqrt((count * own + ASSUMED_COUNT) / (count + ASSUMED_COUNT))));
}

/**
 * By how much the pressure of a day moves all flows of a meter, as its own days say: the spread of the share by which each day passed more than expected,
 * by the middle and by the tails, the larger, drawn towards what is assumed as by eight days.
 *
 * @param meter - The meter, its flows just learnt. [code]
 * @param days - Days on which runs passed water, from which flows were learnt. [–]
 * @returns Standard deviation as share of the flows, at most what is assumed. [–]
 */
export function learnPressure(meter: ObservedMeter, days: readonly number[]): number {
  const shares = days.flatMap((day) => shareOf(meter, day));
  const middle = shares.length
    ? quantile(
        shares.map(({ share }) => share),
        0.5,
      )
    : 0;
  const squares = shares.map(({ share, noise }) => Math.max(0, (share - middle) ** 2 - noise));
  const own = squares.length > 2 ? Math.max(quantile(squares, 0.5) / MEDIAN_SQUARE, quantile(squares, TAIL) / TAIL_SQUARE) : 0;
  const count = squares.length > 2 ? squares.length : 0;
  return Math.min(PRESSURE_OF_DAY, Math.sqrt((count * own + ASSUMED_COUNT * PRESSURE_OF_DAY ** 2) / (count + ASSUMED_COUNT)));
}

// The share by which all zones of a day passed more than expected, and its variance by the register and the runs' steps.
function shareOf(meter: ObservedMeter, day: number): readonly { readonly share: number; readonly noise: number }[] {
  const { flows } = meter;
  const { gram, residual } = dayEquations(meter, day);
  const along = timesVector(gram, flowsAndClock(flows, 0));
  let [weight, sum] = [0, 0];
  flows.forEach((flow, zone) => {
    if (!((along[zone] as number) > 0)) return;
    weight += flow * (along[zone] as number);
    sum += flow * (residual[zone] as number);
  });
  return weight > 0 ? [{ share: sum / weight, noise: 1 / weight }] : [];
}

interface StepResidual {
  readonly residual: number;
  readonly expected: number;
  readonly assumed: number;
  readonly other: number;
}

interface SquareOfStep {
  /** Square of the residual, less the register's, over the variance assumed. */
  readonly square: number;
  /** How much of an observation it is, from 0 to 1. */
  readonly says: number;
}

function squaresOf(meter: ObservedMeter, day: number): readonly SquareOfStep[] {
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
    .map(({ residual, expected, assumed, other }) => ({
      square: (left * Math.max(0, (residual - pressure * expected) ** 2 - other)) / assumed,
      says: ((USUAL_SQUARE * assumed) / (USUAL_SQUARE * assumed + other)) ** 2,
    }));
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
