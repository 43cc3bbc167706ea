import type { ControllerTraits } from '../../settings/controller-traits.js';
import { layOutStart } from '../../settings/lay-out-start.js';
import type { Program, StationRun } from '../../settings/settings-fact.js';
import type { OpenHours } from './water-window.js';

/** Starts are set to whole steps of this: common practice, no source. [min] */
export const START_STEP = 5;
const DAY = 1440;
const MOST_ORDERS = 24;
const DUST = 1e-9;

/** Puts programs somewhere in the hours; null where they do not fit. */
export type Placing = (programs: readonly Program[]) => readonly Program[] | null;

/** A program without its start times: the weekdays it can fall on, stations, percent in force, starts a day, and how far apart they are at least. */
export interface UnplacedProgram {
  readonly mask: number;
  readonly stations: readonly StationRun[];
  readonly inForce: number;
  readonly starts: number;
  readonly apart: number;
  readonly flowLPerMin: number;
}

/** Start times by program, when the last run of any day ends, and by how much that is too late. [min] */
export interface PlacedStarts {
  readonly starts: readonly (readonly number[])[];
  readonly endsAfter: number;
  readonly excess: number;
}

/** What bounds running side by side: how many programs, and what meter and main carry. [L/min] */
export interface SideBySide {
  readonly runsAtOnce: number;
  readonly flowLimitLPerMin: number | null;
}

/**
 * Puts starts one after the other, or side by side where timer, meter and main allow, in the order of programs that ends first.
 *
 * Programs that never fall on one day may start at one time; while one waits between its starts another may run.
 *
 * @param programs - The programs. [min]
 * @param hours - Hours in which everything runs. [min]
 * @param traits - Resolution and longest run of the timer. [min]
 * @param limits - What may run side by side. [L/min]
 * @returns Starts as minutes after midnight, and the end after the hours begin. [min]
 */
export function placeStarts(
  programs: readonly UnplacedProgram[],
  hours: OpenHours,
  traits: Pick<ControllerTraits, 'minuteStep' | 'maxMinutes'>,
  limits: SideBySide,
): PlacedStarts {
  const lengths = programs.map((program) => Math.max(0, ...layOutStart(program.stations, program.inForce, traits).map(({ end }) => end)));
  const first = Math.ceil(hours.from / START_STEP) * START_STEP - hours.from;
  let best: readonly Placed[] = [];
  let least = Number.POSITIVE_INFINITY;
  for (const order of ordersOf(programs.length)) {
    const placed = placedIn(order, { programs, lengths, first, limits });
    const end = placed.reduce((last, each) => Math.max(last, each.end), 0);
    if (end < least) [best, least] = [placed, end];
    if (least <= hours.minutes) break;
  }
  const starts = programs.map((_, at) => best.filter(({ program }) => program === at).map(({ begin }) => (hours.from + begin) % DAY));
  const endsAfter = programs.length ? least : 0;
  return { starts, endsAfter, excess: Math.max(0, endsAfter - hours.minutes) };
}

interface Placed {
  readonly program: number;
  readonly begin: number;
  readonly end: number;
}

interface ToPlace {
  readonly programs: readonly UnplacedProgram[];
  readonly lengths: readonly number[];
  readonly first: number;
  readonly limits: SideBySide;
}

// Round by round: the first starts of all programs, then the second ones.
function placedIn(order: readonly number[], about: ToPlace): readonly Placed[] {
  const { programs, lengths, first } = about;
  const placed: Placed[] = [];
  const rounds = Math.max(0, ...programs.map(({ starts }) => starts));
  for (let round = 0; round < rounds; round += 1) {
    for (const at of order) {
      const program = programs[at] as UnplacedProgram;
      if (round >= program.starts) continue;
      const before = placed.filter((each) => each.program === at).at(-1);
      const ready = before ? stepAfter(Math.max(before.end, before.begin + program.apart), first) : first;
      const begin = earliest(placed, at, ready, about);
      placed.push({ program: at, begin, end: begin + (lengths[at] as number) });
    }
  }
  return placed;
}

function earliest(placed: readonly Placed[], at: number, ready: number, { programs, lengths, first, limits }: ToPlace): number {
  const program = programs[at] as UnplacedProgram;
  const length = lengths[at] as number;
  const others = placed.filter((each) => ((programs[each.program] as UnplacedProgram).mask & program.mask) !== 0);
  const times = [ready, ...others.map(({ end }) => stepAfter(end, first)).filter((time) => time > ready)].sort((a, b) => a - b);
  const isFree = (time: number) => {
    const beside = others.filter(({ begin, end }) => begin < time + length - DUST && time < end - DUST);
    if (beside.length === 0) return true;
    // All that touch it are taken as running together: safe, if not the tightest.
    const flow = beside.reduce((sum, each) => sum + (programs[each.program] as UnplacedProgram).flowLPerMin, program.flowLPerMin);
    return beside.length < limits.runsAtOnce && limits.flowLimitLPerMin !== null && flow <= limits.flowLimitLPerMin;
  };
  return times.find(isFree) ?? (times.at(-1) as number);
}

function stepAfter(minute: number, first: number): number {
  return Math.ceil((minute - first) / START_STEP - DUST) * START_STEP + first;
}

function ordersOf(length: number): readonly (readonly number[])[] {
  const orders: (readonly number[])[] = [];
  const grow = (order: readonly number[]) => {
    if (orders.length >= MOST_ORDERS) return;
    if (order.length === length) orders.push(order);
    else for (let at = 0; at < length; at += 1) if (!order.includes(at)) grow([...order, at]);
  };
  grow([]);
  return orders;
}
