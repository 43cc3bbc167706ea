import { soakAfter } from '../demand/cycles-of-run.js';
import type { PlanInput } from '../plan-input.js';
import { type Assignment, costOf, type Ground, priceIn } from '../pricing/assignment.js';
import { type PlacedPrograms, programsOf } from './programs-of.js';

const MOST_ROUNDS = 20;
/** Changes that are laid out to find one that frees most for least. */
const MOST_RELIEFS = 80;
/** A fit that costs more than this share beyond what was found is looked for another way too. [–] */
const WORTH_ANOTHER_TRY = 0.05;
const WORTH_DIVIDING = 3;
const WORTH_GROWING = 1;
const DUST = 1e-6;

/**
 * Fits starts and soaks of an assignment into the hours: by the change of one zone that frees a minute for least, again and again.
 *
 * A zone may leave for another program, run one cycle or some steps less, or go dry.
 *
 * @param input - The controller. [code]
 * @param ground - What was searched on. [–]
 * @param found - What was found without counting soaks and start times. [–]
 * @returns What fits, with its starts. [–]
 */
export function fitStarts(
  input: PlanInput,
  ground: Ground,
  found: Assignment,
): { readonly assignment: Assignment; readonly placed: PlacedPrograms; readonly cost: number } {
  const first: Fitted = { assignment: found, placed: programsOf(input, ground, found) };
  const cost = (of: Assignment) => costOf(ground, of) + splitCost(ground, of);
  const relieved = relieve(input, ground, first);
  const fits = (of: Fitted | null): of is Fitted => of !== null && of.placed.excess <= DUST;
  const others =
    fits(relieved) && cost(relieved.assignment) <= cost(found) * (1 + WORTH_ANOTHER_TRY)
      ? []
      : [shortened(input, ground, found, 0), shortened(input, ground, found, WORTH_DIVIDING)];
  const dry = { ...found, slotOf: found.slotOf.map(() => -1), steps: found.steps.map(() => 0) };
  const best = [relieved, ...others]
    .filter(fits)
    .sort((a, b) => cost(a.assignment) - cost(b.assignment))
    .slice(0, WORTH_GROWING)
    .map(({ assignment, placed }) => grown(input, ground, assignment, placed))
    .reduce<Fitted>((least, each) => (cost(each.assignment) < cost(least.assignment) ? each : least), {
      assignment: dry,
      placed: programsOf(input, ground, dry),
    });
  return { ...best, cost: cost(best.assignment) };
}

function relieve(input: PlanInput, ground: Ground, first: Fitted): Fitted {
  let now = first;
  for (let round = 0; round < MOST_ROUNDS && now.placed.excess > DUST; round += 1) {
    const next = cheapestRelief(input, ground, now.assignment, now.placed.excess);
    const assignment: Assignment | null = next ? next.assignment : withoutSlowest(ground, now.assignment);
    if (!assignment) break;
    now = next ?? { assignment, placed: programsOf(input, ground, assignment) };
  }
  return now;
}

const SHARES = [0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3, 0.2, 0.1];

// Every run shorter by the same share, until all fit; divided into cycles where that fills soaks.
function shortened(input: PlanInput, ground: Ground, found: Assignment, cycles: number): Fitted | null {
  const split = cycles > 1 && ground.frame.cycleSoak ? { split: found.options.map(() => cycles) } : {};
  for (const share of SHARES) {
    const steps = found.steps.map((each) => (each > 0 ? Math.max(1, Math.floor(each * share)) : 0));
    const assignment = { ...found, ...split, steps };
    const placed = programsOf(input, ground, assignment);
    if (placed.excess <= DUST) return { assignment, placed };
  }
  return null;
}

interface Fitted {
  readonly assignment: Assignment;
  readonly placed: PlacedPrograms;
}

function priced(
  ground: Ground,
  now: Assignment,
  changes: readonly Assignment[],
): readonly { readonly assignment: Assignment; readonly cost: number }[] {
  const before = costOf(ground, now) + splitCost(ground, now);
  return changes
    .map((assignment) => ({ assignment, cost: costOf(ground, assignment) + splitCost(ground, assignment) - before }))
    .filter(({ cost }) => Number.isFinite(cost))
    .sort((a, b) => a.cost - b.cost);
}

function cheapestRelief(input: PlanInput, ground: Ground, now: Assignment, excess: number): Fitted | null {
  let best: (Fitted & { readonly rate: number }) | null = null;
  let tried = 0;
  for (const { assignment, cost } of priced(ground, now, changesOf(ground, now, excess))) {
    // What costs more than the best for all of the excess cannot be better, nor can what comes after it.
    if (best && (cost / excess >= best.rate || tried >= MOST_RELIEFS)) break;
    tried += 1;
    const placed = programsOf(input, ground, assignment);
    const freed = excess - placed.excess;
    if (freed < DUST) continue;
    if (!best || cost / freed < best.rate) best = { assignment, placed, rate: cost / freed };
  }
  return best;
}

const MOST_GROWN = 12;

// What was cut by more than it had to be grows again while everything fits.
function grown(input: PlanInput, ground: Ground, fitting: Assignment, placedSo: PlacedPrograms): Fitted {
  let best: Fitted = { assignment: fitting, placed: placedSo };
  for (let round = 0; round < MOST_GROWN; round += 1) {
    const better = priced(ground, best.assignment, moves(ground, best.assignment)).filter(({ cost }) => cost < -1);
    const next = better
      .slice(0, MOST_TRIED)
      .map(({ assignment }) => ({ assignment, placed: programsOf(input, ground, assignment) }))
      .find(({ placed }) => placed.excess <= DUST);
    if (!next) return best;
    best = next;
  }
  return best;
}

const MOST_TRIED = 30;

// Every zone to its best runs in every used program.
function moves(ground: Ground, now: Assignment): readonly Assignment[] {
  return now.slotOf.flatMap((from, zone) =>
    now.options.flatMap((option, slot) => {
      const choices = now.slotOf.includes(slot) ? option?.zones[zone] : null;
      if (!choices || !option) return [];
      const steps = slot === from ? [(now.steps[zone] as number) + 1, ...choices.steps] : choices.steps;
      return [...new Set(steps)]
        .filter((each) => slot !== from || each !== now.steps[zone])
        .sort((a, b) => priceIn(ground, zone, slot, option, a) - priceIn(ground, zone, slot, option, b))
        .slice(0, 2)
        .map((each) => changed(now, zone, slot, each));
    }),
  );
}

// Where no change of one zone frees anything, the one that soaks longest goes first.
function withoutSlowest(ground: Ground, now: Assignment): Assignment | null {
  let [slowest, longest] = [-1, -1];
  now.slotOf.forEach((slot, zone) => {
    const { intake } = ground.zones[zone]?.zone ?? { intake: null };
    const soak = slot < 0 ? -1 : soakAfter(intake, (now.steps[zone] as number) * ground.frame.step);
    if (soak > longest) [slowest, longest] = [zone, soak];
  });
  return slowest < 0 ? null : changed(now, slowest, -1, 0);
}

function changesOf(ground: Ground, now: Assignment, excess: number): readonly Assignment[] {
  const merged = now.options
    .flatMap((_, one) => now.options.map((_each, other) => mergedInto(ground, now, one, other)))
    .filter((each) => each !== null);
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
    const less = [...new Set(fewer)].filter((each) => each > 0 && each < steps).map((each) => changed(now, zone, from, each));
    return [...less, changed(now, zone, -1, 0)];
  });
  return [...merged, ...splits(ground, now), ...single, ...moves(ground, now)];
}

const MOST_SPLITS = 6;

// Stations divided into as many cycles as the slowest fill its soaks.
function splits(ground: Ground, now: Assignment): readonly Assignment[] {
  if (!ground.frame.cycleSoak) return [];
  return now.options.flatMap((option, slot) => {
    const before = now.split?.[slot] ?? 1;
    if (!option || !now.slotOf.includes(slot)) return [];
    return Array.from({ length: MOST_SPLITS - 1 }, (_, at) => at + 2)
      .filter((cycles) => cycles > before)
      .map((cycles) => ({ ...now, split: now.options.map((_each, at) => (at === slot ? cycles : (now.split?.[at] ?? 1))) }));
  });
}

// Two entries for each station that is divided further; an upper bound, those that are divided anyway count too.
function splitCost({ frame }: Ground, { split, slotOf }: Assignment): number {
  return 2 * frame.weights.keyPress * slotOf.filter((slot) => slot >= 0 && (split?.[slot] ?? 1) > 1).length;
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

function changed(now: Assignment, zone: number, slot: number, steps: number): Assignment {
  return {
    ...now,
    slotOf: now.slotOf.map((each, at) => (at === zone ? slot : each)),
    steps: now.steps.map((each, at) => (at === zone ? steps : each)),
  };
}
