import { soakAfter } from '../../demand/cycles-of-run.js';
import type { OpenHours } from '../../layout/water-window.js';
import type { PlanInput } from '../../plan-input.js';
import { type Assignment, costOf, type Ground } from '../../pricing/assignment.js';
import type { EffortLeft } from '../../search/effort.js';
import { fitHours } from '../../search/fit-hours.js';
import { type Change, changed, changesOf, cheapestFirst, moves } from './changes.js';
import { type About, DUST, fewerPresses, type FittedStarts, layOut, longestDays } from './lay-out.js';

const MOST_ROUNDS = 20;
/** Changes that are laid out to find one that frees most for least. */
const MOST_RELIEFS = 12;
/** Times that hours are taken to be shorter, until what fits into them can be laid out. */
const MOST_SHRINKS = 8;

/**
 * Fits starts and soaks into the hours. Of assignments that may be too long with their soaks the one is taken that then costs least.
 *
 * What does not fit is made to: as if the hours were shorter by what is missing, or by the change of one zone that frees a minute for least,
 * again and again. A zone may leave for another program, run one cycle or some steps less, or go dry.
 *
 * @param input - The controller. [code]
 * @param ground - What was searched on. [–]
 * @param found - What was found without counting soaks and start times, cheapest first. [–]
 * @param effort - How much may be laid out, changed to what is left. [–]
 * @returns What fits, with its starts. [–]
 */
export function fitStarts(
  input: PlanInput,
  ground: Ground,
  found: readonly Assignment[],
  effort: Pick<EffortLeft, 'layouts' | 'work'>,
): FittedStarts {
  const limits = { runsAtOnce: Math.max(1, Math.floor(input.traits.runsAtOnce ?? 1)), flowLimitLPerMin: input.flowLimitLPerMin };
  const lanes = ground.perDay / Math.max(1, ground.frame.hours.minutes);
  const about: About = { ground, limits, lanes, known: new WeakMap(), effort };
  const { best, hardest } = firstFits(about, found);
  const relieved = hardest && relieve(about, hardest);
  return [best, ...(relieved ? [relieved] : [])]
    .filter(({ excess }) => excess <= DUST)
    .map((each) => fewerPresses(about, grown(about, each)))
    .reduce((least, each) => (each.cost < least.cost ? each : least), best);
}

interface FirstFits {
  readonly best: FittedStarts;
  readonly hardest: FittedStarts | null;
}

// The cheapest that fits as it is or in shorter hours, nothing watered at the worst; and the first one that did not fit as it is.
function firstFits(about: About, found: readonly Assignment[]): FirstFits {
  let best = layOut(about, dryOf(about.ground));
  let hardest: FittedStarts | null = null;
  for (const each of found) {
    if (costOf(about.ground, each) >= best.cost) continue;
    const first = layOut(about, each);
    if (first.excess > DUST) hardest ??= first;
    const fitted = fewerPresses(about, first.excess > DUST ? shrunk(about, first) : first);
    if (fitted.excess <= DUST && fitted.cost < best.cost) best = fitted;
  }
  return { best, hardest };
}

function dryOf({ slots, zones }: Ground): Assignment {
  const unused = slots.map(() => null);
  return { options: unused, patterns: unused, slotOf: zones.map(() => -1), steps: zones.map(() => 0) };
}

// As if the hours were shorter by what is missing.
function shrunk(about: About, first: FittedStarts): FittedStarts {
  const { ground } = about;
  let now = first;
  let less = 0;
  for (let round = 0; round < MOST_SHRINKS && now.excess > DUST; round += 1) {
    less += Math.max(now.excess, ground.frame.step);
    const hours = shorterBy(ground.frame.hours, less);
    const shorter = { ...ground, perDay: Math.max(0, ground.perDay - less), frame: { ...ground.frame, hours } };
    now = layOut(about, fitHours(shorter, first.assignment, about.effort));
  }
  return now;
}

function shorterBy(hours: OpenHours, less: number): OpenHours {
  const cut = (minutes: number, at: number) => Math.max(0, minutes - less / (at + 1));
  return { ...hours, longest: hours.longest.map(cut), longestOfDate: hours.longestOfDate.map(cut) };
}

function relieve(about: About, first: FittedStarts): FittedStarts {
  let now = first;
  for (let round = 0; round < MOST_ROUNDS && now.excess > DUST && isLeft(about, 0); round += 1) {
    const next = cheapestRelief(about, now);
    const without = next ? null : withoutSlowest(about.ground, now.assignment);
    if (!next && !without) break;
    now = next ?? layOut(about, without as Assignment);
  }
  return now;
}

function cheapestRelief(about: About, now: FittedStarts): FittedStarts | null {
  const { excess } = now;
  let [best, rate] = [null as FittedStarts | null, Number.POSITIVE_INFINITY];
  let tried = 0;
  for (const { made, cost } of changesThatMayFree(about, now)) {
    // What costs more than the best for all of the excess cannot be better, nor can what comes after it.
    if (best && (cost / excess >= rate || tried >= MOST_RELIEFS)) break;
    tried += 1;
    const fitted = layOut(about, made());
    const freed = excess - fitted.excess;
    if (freed < DUST || (fitted.cost - now.cost) / freed >= rate) continue;
    [best, rate] = [fitted, (fitted.cost - now.cost) / freed];
  }
  return best;
}

// Taken from other days a change leaves the longest as long as they are.
function changesThatMayFree({ ground, effort }: About, now: FittedStarts): readonly Change[] {
  effort.work -= stepsOfChanges(ground);
  const days = longestDays(now);
  const { patterns } = now.assignment;
  const changes = changesOf(ground, now.assignment, now.excess);
  return days === 0 ? changes : changes.filter(({ from }) => (days & (patterns[from]?.mask ?? 0)) === days);
}

/** Steps of work that one change of one zone counts as. */
const STEPS_OF_A_CHANGE = 4_000;

function stepsOfChanges({ zones, slots }: Ground): number {
  return zones.length * slots.length * STEPS_OF_A_CHANGE;
}

const MOST_GROWN = 24;
/** Layouts that growing may take beyond what all else has left. */
const FOR_GROWING = 60;
/** Steps of work for each of them. */
const STEPS_OF_A_LAYOUT = 40_000;

function isLeft({ effort }: About, beyond: number): boolean {
  return effort.layouts > -beyond && effort.work > -beyond * STEPS_OF_A_LAYOUT;
}

// What was cut by more than it had to be grows again while everything fits.
function grown(about: About, fitting: FittedStarts): FittedStarts {
  let best = fitting;
  for (let round = 0; round < MOST_GROWN && isLeft(about, FOR_GROWING); round += 1) {
    about.effort.work -= stepsOfChanges(about.ground);
    const better = cheapestFirst(moves(about.ground, best.assignment)).filter(({ cost }) => cost < -1);
    const next = better
      .slice(0, MOST_TRIED)
      .map(({ made }) => layOut(about, made()))
      .find(({ excess, cost }) => excess <= DUST && cost < best.cost);
    if (!next) return best;
    best = next;
  }
  return best;
}

const MOST_TRIED = 30;

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
