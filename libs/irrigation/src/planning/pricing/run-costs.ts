import { feltThirst } from '../demand/felt-thirst.js';
import { steadyWater } from '../demand/steady-water.kernel.js';
import { longestStart } from '../layout/longest-start.js';
import type { PlanFrame, PreparedZone } from './prepared-zone.js';

const MINUTES_PER_HOUR = 60;
/** Floating-point dust of steps and slopes. */
const DUST = 1e-9;

/** What runs of a zone cost in a month on days of one pattern: runs per start in steps, and the price of each. */
export interface RunCosts {
  /** Runs at which the price bends, none first where it is allowed; between them it is straight. [steps] */
  readonly bends: readonly number[];
  readonly prices: readonly number[];
  readonly most: number;
  readonly priceOf: (steps: number) => number;
}

/**
 * Price of a zone's runs by their length, on days of one pattern with some starts a day.
 *
 * Unmet water falls and lost water grows with the run, both convex, so that the price is straight between a few bends: with them the best run
 * under any further price of a minute is found exactly.
 *
 * @param prepared - The zone in minutes. [min]
 * @param gaps - Days from each watering to the next. [d]
 * @param starts - Starts of the program on each of its days. [–]
 * @param frame - Resolution, month and weights. [code]
 * @returns Bends and prices; only runs that soil, rules, hours and timer allow. [–]
 */
export function runCosts(prepared: PreparedZone, gaps: readonly number[], starts: number, frame: PlanFrame): RunCosts {
  const { zone, needPerDay, storage } = prepared;
  const { step } = frame;
  const priceOf = pricing(prepared, gaps, starts, frame);
  const perStart = Math.min(
    prepared.mostPerDay / starts,
    Math.min(prepared.mostPerStart, longestStart(frame.hours, starts, Math.max(...gaps) === 1)),
    frame.mostMinutes,
    starts > 1 ? inStarts(prepared, starts, frame) : Number.POSITIVE_INFINITY,
  );
  const most = Math.floor(perStart / step + DUST);
  const useful = Math.min(Math.max(...gaps) * needPerDay, storage) / starts + zone.fillMinutes;
  const last = Math.min(most, Math.ceil(useful / step - DUST));
  const first = Math.min(last, Math.max(1, Math.ceil(zone.fillMinutes / step - DUST)));
  if (last < 1) return { bends: [0], prices: [priceOf(0)], most: Math.max(0, most), priceOf };
  const bends = [0, ...bendsBetween(priceOf, first, last)];
  return { bends, prices: bends.map(priceOf), most, priceOf };
}

// All that a day's starts put out goes in between the first and the end of the hours, but for what then still stands.
function inStarts({ zone }: PreparedZone, starts: number, { hours }: PlanFrame): number {
  const { intake } = zone;
  if (!intake || intake.precipitationRate <= intake.intakeRate) return Number.POSITIVE_INFINITY;
  const span = hours.pieces.reduce((end, { after, minutes }) => Math.max(end, after + minutes), 0);
  return (span * intake.intakeRate + intake.surfaceAccumulation * MINUTES_PER_HOUR) / intake.precipitationRate / starts;
}

const scratch = new Float64Array(2);

function pricing({ zone, needPerDay, storage }: PreparedZone, gaps: readonly number[], starts: number, frame: PlanFrame) {
  const { step, days, weights } = frame;
  const waterings = new Float64Array(gaps.length);
  const round = gaps.reduce((sum, gap) => sum + gap, 0);
  const rounds = days / round;
  const { flowLPerMin: flow, fillMinutes: fill } = zone;
  const known = new Map<number, number>();
  return (steps: number): number => {
    const before = known.get(steps);
    if (before !== undefined) return before;
    const run = steps * step;
    const filled = Math.min(run, fill);
    waterings.fill((run - filled) * starts);
    steadyWater(gaps, waterings, needPerDay, storage, scratch);
    const [unmet, lost] = [scratch[0] as number, (scratch[1] as number) + filled * starts * gaps.length];
    const wetting = run > 0 ? weights.watering * gaps.length : 0;
    const price = rounds * (flow * (weights.thirst * feltThirst(unmet, needPerDay * round) + weights.waste * lost) + wetting);
    known.set(steps, price);
    return price;
  };
}

// A convex function of whole numbers: where the slopes at both ends differ it bends at the meeting of their lines, or on both sides of it.
function bendsBetween(priceOf: (steps: number) => number, first: number, last: number): readonly number[] {
  const found = new Set([first, last]);
  const spans: [number, number][] = [[first, last]];
  for (let span = spans.pop(); span; span = spans.pop()) {
    const [low, high] = span;
    if (high - low < 2) continue;
    const rising = priceOf(low + 1) - priceOf(low);
    const arriving = priceOf(high) - priceOf(high - 1);
    if (Math.abs(arriving - rising) <= DUST * (1 + Math.abs(rising))) continue;
    const meet = (priceOf(high) - priceOf(low) + rising * low - arriving * high) / (rising - arriving);
    const at = Math.min(high - 1, Math.max(low + 1, Math.floor(meet)));
    found.add(at).add(Math.min(high, at + 1));
    spans.push([low, at], [Math.min(high, at + 1), high]);
  }
  return [...found].sort((a, b) => a - b);
}
