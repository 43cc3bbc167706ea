import { type Assignment, costOf, type Ground, priceIn } from '../../pricing/assignment.js';

/** A change of an assignment: what it adds to the cost, the slot that it takes from (-1: none), and the assignment that it makes. */
export interface Change {
  readonly cost: number;
  readonly from: number;
  readonly made: () => Assignment;
}

/**
 * Changes in the order of their cost; what must not be is left out.
 *
 * @param changes - The changes. [–]
 * @returns The cheapest first. [–]
 */
export function cheapestFirst(changes: readonly Change[]): readonly Change[] {
  return changes.filter(({ cost }) => Number.isFinite(cost)).sort((a, b) => a.cost - b.cost);
}

/**
 * Changes that may make an assignment shorter, the cheapest first: programs that become one, zones that run less or go dry, and all moves.
 *
 * @param ground - Zones, slots and limits. [–]
 * @param now - The assignment. [–]
 * @param excess - By how much it is too long. [min]
 * @returns The changes. [–]
 */
export function changesOf(ground: Ground, now: Assignment, excess: number): readonly Change[] {
  const before = costOf(ground, now);
  const merged = now.options
    .flatMap((_, one) => now.options.map((_each, other) => ({ from: one, each: mergedInto(ground, now, one, other) })))
    .flatMap(({ from, each }) => (each ? [{ cost: costOf(ground, each) - before, from, made: () => each }] : []));
  const single = now.slotOf.flatMap((from, zone) => {
    const option = now.options[from];
    if (!option) return [];
    const steps = now.steps[zone] as number;
    const inOne = Math.round((ground.zones[zone]?.longestCycle ?? 0) / ground.frame.step);
    const perStep = ground.frame.step * option.starts;
    const fewer = [
      inOne > 0 ? (Math.ceil(steps / inOne) - 1) * inOne : 0,
      steps - 1,
      steps - Math.ceil(excess / perStep),
      Math.floor(steps / 2),
    ];
    const less = [...new Set(fewer)].filter((each) => each > 0 && each < steps).map((each) => changeOf(ground, now, zone, [from, each]));
    return [...less, changeOf(ground, now, zone, [-1, 0])];
  });
  return cheapestFirst([...merged, ...single, ...moves(ground, now)]);
}

/**
 * Every zone to its two best runs in every used program.
 *
 * @param ground - Zones, slots and limits. [–]
 * @param now - The assignment. [–]
 * @returns The changes, in no order. [–]
 */
export function moves(ground: Ground, now: Assignment): readonly Change[] {
  const isUsed = now.options.map((_, slot) => now.slotOf.includes(slot));
  return now.slotOf.flatMap((from, zone) =>
    now.options.flatMap((option, slot) => {
      const choices = isUsed[slot] ? option?.zones[zone] : null;
      if (!choices || !option) return [];
      const priceOf = (steps: number) => priceIn(ground, zone, slot, option, steps);
      const here = now.steps[zone] as number;
      const best =
        slot === from
          ? twoCheapest([here + 1, ...choices.steps], (steps) => (steps === here ? null : priceOf(steps)))
          : bestElsewhere(ground, now, zone, slot, () => twoCheapest(choices.steps, priceOf));
      return best.map((each) => changeOf(ground, now, zone, [slot, each]));
    }),
  );
}

/** The two best runs of each zone in each program that it is not in, by the options of an assignment and those that are made of it. */
const elsewhere = new WeakMap<Assignment['options'], (readonly number[] | undefined)[]>();

function bestElsewhere(
  ground: Ground,
  { options }: Assignment,
  zone: number,
  slot: number,
  find: () => readonly number[],
): readonly number[] {
  const known = elsewhere.get(options) ?? [];
  elsewhere.set(options, known);
  const at = slot * ground.zones.length + zone;
  const best = known[at] ?? find();
  known[at] = best;
  return best;
}

function twoCheapest(steps: readonly number[], priceOf: (steps: number) => number | null): readonly number[] {
  let [first, second] = [-1, -1];
  let [least, next] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (const each of steps) {
    const price = each === first ? null : priceOf(each);
    if (price === null || price >= next) continue;
    if (price < least) [first, second, least, next] = [each, first, price, least];
    else [second, next] = [each, price];
  }
  return [first, second].filter((each) => each >= 0);
}

// A program whose last zone leaves takes its presses with it.
function changeOf(ground: Ground, now: Assignment, zone: number, [slot, steps]: readonly [number, number]): Change {
  const from = now.slotOf[zone] as number;
  const [before, after] = [from < 0 ? null : now.options[from], slot < 0 ? null : now.options[slot]];
  const dry = ground.dry[zone] as number;
  const priceNow = before ? priceIn(ground, zone, from, before, now.steps[zone] as number) : dry;
  const priceThen = after ? priceIn(ground, zone, slot, after, steps) : dry;
  const isEmptied = before && slot !== from && now.slotOf.every((each, other) => each !== from || other === zone);
  const presses = isEmptied ? -before.presses : 0;
  return { cost: priceThen - priceNow + ground.frame.weights.keyPress * presses, from, made: () => changed(now, zone, slot, steps) };
}

// Programs on the same days soak side by side when they are one.
function mergedInto(ground: Ground, now: Assignment, one: number, other: number): Assignment | null {
  const into = now.options[other];
  const alike = one !== other && sameTimes(now, one, other);
  if (!into || !alike || !now.slotOf.includes(one) || !now.slotOf.includes(other)) return null;
  const slotOf = now.slotOf.map((slot) => (slot === one ? other : slot));
  const fits = slotOf.every(
    (slot, zone) => slot !== other || Number.isFinite(priceIn(ground, zone, other, into, now.steps[zone] as number)),
  );
  return fits ? { ...now, slotOf } : null;
}

function sameTimes({ options, patterns }: Assignment, one: number, other: number): boolean {
  const [from, into] = [options[one], options[other]];
  const sameDays = patterns[one]?.mask === patterns[other]?.mask;
  return sameDays && from?.inForce === into?.inForce && from?.starts === into?.starts;
}

/**
 * An assignment with one zone elsewhere.
 *
 * @param now - The assignment. [–]
 * @param zone - The zone. [–]
 * @param slot - Its slot then; -1 is none. [–]
 * @param steps - Its steps per start then. [steps]
 * @returns The changed assignment. [–]
 */
export function changed(now: Assignment, zone: number, slot: number, steps: number): Assignment {
  return {
    ...now,
    slotOf: now.slotOf.map((each, at) => (at === zone ? slot : each)),
    steps: now.steps.map((each, at) => (at === zone ? steps : each)),
  };
}
