import type { DayPattern } from '../days/day-pattern.js';
import { type Ground, programLimit } from '../pricing/assignment.js';
import type { SlotOption } from '../pricing/slots.js';
import type { LeafColumn, LeafProblem } from './leaf-bound.kernel.js';
import { type Meeting, meetings } from './meetings.js';

const WEEK = 7;

/** Columns written already, by option: each is asked for in many leaves. */
const columns = new WeakMap<SlotOption, LeafColumn>();
/** What leaves of a ground share whose programs have the same days, by these days. */
const shared = new WeakMap<Ground, Map<string, SharedByDays>>();

/** Limits of all leaves with the same days, the prices that the last of them came to, and the ways in which their programs can meet. */
interface SharedByDays {
  readonly limits: Float64Array;
  readonly weights: Float64Array;
  readonly prices: Float64Array;
  readonly dry: Float64Array;
  ways: readonly PricedMeeting[] | null | undefined;
}

/** A way to meet, and the prices that the last leaf came to there. */
export interface PricedMeeting extends Meeting {
  readonly prices: Float64Array;
}

/** A leaf as numbers, and the prices to begin with: those of the last leaf like it. */
export interface WrittenLeaf {
  readonly problem: LeafProblem;
  readonly prices: Float64Array;
}

/**
 * Writes a leaf (what each slot is given) as numbers: what every zone may be given, and the limits of hours.
 *
 * Where the weekdays of every program are settled, each weekday is a limit; where programs can be turned through the week, the days that some
 * of them share are one, and so are programs that must meet on some day. Each program has to fit by itself.
 *
 * @param ground - Zones, slots and limits. [–]
 * @param options - What each slot is given; null is unused. [–]
 * @returns The leaf. [min]
 */
export function leafProblem(ground: Ground, options: readonly (SlotOption | null)[]): WrittenLeaf {
  const { limits, weights, dry, prices } = byDays(ground, options);
  return { problem: { columns: options.map((option, slot) => option && columnOf(ground, option, slot)), dry, limits, weights }, prices };
}

/**
 * Every way in which the programs of a leaf can meet on the days of a week.
 *
 * @param ground - Zones, slots and limits. [–]
 * @param options - What each slot is given; null is unused. [–]
 * @returns The ways, or null where there are too many turns to look at. [–]
 */
export function waysToMeet(ground: Ground, options: readonly (SlotOption | null)[]): readonly PricedMeeting[] | null {
  const known = byDays(ground, options);
  if (known.ways === undefined) {
    const programs = options.filter(Boolean).length;
    const ways = meetings(options.map((option) => option?.days.patterns ?? []));
    known.ways = ways && ways.map((way) => ({ ...way, prices: new Float64Array(programs + way.together.length) }));
  }
  return known.ways;
}

/**
 * Runs that one round of a leaf's bound looks at.
 *
 * @param problem - The leaf. [min]
 * @returns Steps of work. [–]
 */
export function runsOf(problem: LeafProblem): number {
  const { columns, dry, weights } = problem;
  return columns.reduce((sum, column) => sum + (column?.steps.length ?? 0), dry.length + weights.length);
}

function byDays(ground: Ground, options: readonly (SlotOption | null)[]): SharedByDays {
  const ofGround = shared.get(ground) ?? new Map<string, SharedByDays>();
  shared.set(ground, ofGround);
  const key = options.map((option) => (option ? `${option.days.key} ${option.starts > 1}` : '')).join('|');
  const known = ofGround.get(key);
  if (known) return known;
  const { limits, weights } = limitsOf(ground, options);
  const made: SharedByDays = {
    limits: Float64Array.from(limits),
    weights: Float64Array.from(weights.flat()),
    prices: new Float64Array(limits.length),
    dry: Float64Array.from(ground.dry),
    ways: undefined,
  };
  ofGround.set(key, made);
  return made;
}

/**
 * What zones may be given in a slot, as numbers; written once for each option.
 *
 * @param ground - Zones and slots. [–]
 * @param option - What the slot is given. [–]
 * @param slot - The slot. [–]
 * @returns Runs of all zones. [min]
 */
export function columnOf(ground: Ground, option: SlotOption, slot: number): LeafColumn {
  const known = columns.get(option);
  if (known) return known;
  const { keyPress } = ground.frame.weights;
  const from = [0];
  const [price, steps] = [[], []] as [number[], number[]];
  option.zones.forEach((choices, zone) => {
    if (choices) {
      steps.push(...choices.steps);
      price.push(...choices.prices.map((each) => each + keyPress * (ground.leaving[zone]?.[slot] ?? 0)));
    }
    from.push(steps.length);
  });
  const column = {
    from: Int32Array.from(from),
    steps: Int32Array.from(steps),
    price: Float64Array.from(price),
    minutes: Float64Array.from(steps, (each) => each * ground.frame.step * option.starts),
  };
  columns.set(option, column);
  return column;
}

interface Limits {
  readonly limits: readonly number[];
  readonly weights: readonly (readonly number[])[];
}

function limitsOf(ground: Ground, options: readonly (SlotOption | null)[]): Limits {
  const alone = options.flatMap((option, slot) =>
    option ? [{ limit: programLimit(ground, option), weights: options.map((_, at) => Number(at === slot)) }] : [],
  );
  const patterns = options.map((option) => option?.days.patterns ?? []);
  const settled = patterns.every((of) => of.length < 2);
  const shared = settled ? byWeekday(ground, patterns) : byWeek(ground, options);
  const all = [...alone, ...shared];
  return { limits: all.map(({ limit }) => limit), weights: all.map(({ weights }) => weights) };
}

interface Limit {
  readonly limit: number;
  readonly weights: readonly number[];
}

function byWeekday(ground: Ground, patterns: readonly (readonly DayPattern[])[]): readonly Limit[] {
  const days = new Map<string, Limit>();
  for (let day = 0; day < WEEK; day += 1) {
    const weights = patterns.map((of) => Number(((of[0]?.mask ?? 0) & (1 << day)) !== 0));
    if (weights.some((weight) => weight > 0)) days.set(weights.join(), { limit: ground.perDay, weights });
  }
  return [...days.values()];
}

function byWeek(ground: Ground, options: readonly (SlotOption | null)[]): readonly Limit[] {
  const masks = options.map((option) => option?.days.patterns.reduce((mask, pattern) => mask | pattern.mask, 0) ?? 0);
  const count = options.map((option) => (option?.days.gaps.length === 1 && option.days.perWeek !== 1 ? WEEK : (option?.days.perWeek ?? 0)));
  const limits: Limit[] = [];
  const used = options.reduce((all, option, slot) => (option ? all | (1 << slot) : all), 0);
  // Unused slots would only repeat the limits of the used ones.
  for (let set = used; set > 0; set = (set - 1) & used) {
    const slots = options.map((_, slot) => slot).filter((slot) => set & (1 << slot));
    const days = slots.reduce((sum, slot) => sum + (count[slot] as number), 0);
    const open = bits(slots.reduce((all, slot) => all | (masks[slot] as number), 0));
    const isIn = (slot: number) => Number(slots.includes(slot));
    // All of them share the days they may fall on; where those are too few for all to keep apart, they meet.
    limits.push({ limit: open * ground.perDay, weights: count.map((of, slot) => of * isIn(slot)) });
    if (slots.length > 1 && days > (slots.length - 1) * open)
      limits.push({ limit: ground.perDay, weights: count.map((_, slot) => isIn(slot)) });
  }
  return limits;
}

function bits(mask: number): number {
  let count = 0;
  for (let day = 0; day < WEEK; day += 1) count += (mask >> day) & 1;
  return count;
}
