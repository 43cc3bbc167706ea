import { placeStarts, type SideBySide, START_STEP } from '../../layout/place-starts.js';
import { type Assignment, costOf, type Ground } from '../../pricing/assignment.js';
import type { EffortLeft } from '../../search/effort.js';
import { type DividedProgram, dividedSo, divideRuns, type Division } from './divide-runs.js';

/** Steps of work that placing starts counts as, and dividing the runs of one program. */
const STEPS_OF_A_LAYOUT = 19_000;
const STEPS_OF_A_DIVISION = 3_500;
/** Minutes that are none. */
export const DUST = 1e-6;

/** An assignment with its runs divided and its starts placed, by slot; by how much it is too long, and what it costs with all presses. */
export interface FittedStarts {
  readonly assignment: Assignment;
  readonly divided: readonly (DividedProgram | null)[];
  readonly starts: readonly (readonly number[])[];
  readonly dayLater: readonly boolean[];
  readonly excess: number;
  readonly cost: number;
}

/** What layouts of one controller share: zones, what may run side by side, programs divided before, and how much may still be laid out. */
export interface About {
  readonly ground: Ground;
  readonly limits: SideBySide;
  readonly lanes: number;
  readonly known: WeakMap<Assignment['options'], Map<string, DividedSoFar>>;
  readonly effort: Pick<EffortLeft, 'layouts' | 'work'>;
}

/** One program divided in the ways that have been asked for. */
type DividedSoFar = Partial<Record<Division, DividedProgram | null>>;

/** The way that is shortest: where it does not fit, the others are not tried. */
const SHORTEST: readonly [Division, number] = ['closest', 1];

/** Ways to divide, and steps that starts are set to, in the order in which they are tried. */
const LAYOUTS: readonly (readonly [Division, number])[] = [
  ['fewest', START_STEP],
  ['more', START_STEP],
  ['closest', START_STEP],
];

/**
 * Divides and places an assignment in the first way that fits; in the shortest where that does not. What is more than a weekday has is not placed.
 *
 * @param about - What layouts share; its effort is taken from. [–]
 * @param assignment - The assignment. [–]
 * @returns Where its starts are, or by how much it is too long. [min]
 */
export function layOut(about: About, assignment: Assignment): FittedStarts {
  const known = knownOf(about, assignment);
  const layOutAs = ([division, step]: readonly [Division, number]) => {
    const divided = known.map((of, slot) => dividedOnce(of, division, () => dividedAnew(about, assignment, slot, division)));
    const excess = excessOfDays(about, divided);
    return excess > DUST ? unplaced(about, assignment, divided, excess) : placed(about, assignment, divided, step);
  };
  const shortest = layOutAs(SHORTEST);
  if (shortest.excess > DUST) return shortest;
  for (const layout of LAYOUTS) {
    const longer = layOutAs(layout);
    if (longer.excess <= DUST) return longer;
  }
  return shortest;
}

// Minutes beyond what a weekday has, however they are placed.
function excessOfDays({ ground, lanes }: About, divided: readonly (DividedProgram | null)[]): number {
  let most = 0;
  for (let bit = 1; bit < 128; bit <<= 1) most = Math.max(most, minutesOfDay(divided, bit));
  return Math.max(0, most - ground.frame.hours.minutes * lanes);
}

function minutesOfDay(divided: readonly (DividedProgram | null)[], bit: number): number {
  let minutes = 0;
  for (const program of divided) if (program && program.unplaced.mask & bit) minutes += program.unplaced.length * program.unplaced.starts;
  return minutes;
}

/**
 * The weekdays that are longest where these have more than their hours: only what makes all of them shorter helps.
 *
 * @param fitted - An assignment that may be too long. [–]
 * @returns Bits of the weekdays, Monday the lowest; none where every day holds its minutes, and only their places are missing. [code]
 */
export function longestDays(fitted: FittedStarts): number {
  const { divided, starts, excess } = fitted;
  if (starts.length || excess <= DUST) return 0;
  const bits = [1, 2, 4, 8, 16, 32, 64];
  const minutes = bits.map((bit) => minutesOfDay(divided, bit));
  const most = Math.max(...minutes);
  return bits.reduce((all, bit, at) => ((minutes[at] as number) >= most - DUST ? all | bit : all), 0);
}

function unplaced({ ground }: About, assignment: Assignment, divided: FittedStarts['divided'], excess: number): FittedStarts {
  const presses = divided.reduce((sum, program) => sum + (program?.presses ?? 0), 0);
  return {
    assignment,
    divided,
    starts: [],
    dayLater: [],
    excess,
    cost: costOf(ground, assignment) + ground.frame.weights.keyPress * presses,
  };
}

function placed(about: About, assignment: Assignment, divided: FittedStarts['divided'], step: number): FittedStarts {
  const { ground, limits } = about;
  about.effort.layouts -= 1;
  about.effort.work -= STEPS_OF_A_LAYOUT;
  const used = divided.flatMap((program, slot) => (program ? [{ slot, ...program }] : []));
  const { starts, dayLater, excess } = placeStarts(
    used.map(({ unplaced }) => unplaced),
    ground.frame.hours,
    limits,
    step,
  );
  const at = (slot: number) => used.findIndex((each) => each.slot === slot);
  return {
    ...unplaced(about, assignment, divided, excess),
    starts: divided.map((_, slot) => starts[at(slot)] ?? []),
    dayLater: divided.map((_, slot) => dayLater[at(slot)] ?? false),
  };
}

/**
 * Makes whole again what was divided needlessly, station by station.
 *
 * @param about - What layouts share. [–]
 * @param fitted - What fits. [–]
 * @returns What fits with fewer presses. [–]
 */
export function fewerPresses(about: About, fitted: FittedStarts): FittedStarts {
  let best = fitted;
  const { step } = about.ground.frame;
  fitted.divided.forEach((program, slot) => {
    if (!program || program.presses <= 0) return;
    program.members.forEach(({ run }, at) => {
      const now = best.divided[slot];
      if (!now || now.stations[at] === run) return;
      const whole = dividedSo(
        now,
        now.stations.map((each, other) => (other === at ? run : each)),
        step,
      );
      if (whole.presses >= now.presses) return;
      const next = placed(
        about,
        best.assignment,
        best.divided.map((each, other) => (other === slot ? whole : each)),
        1,
      );
      if (next.excess <= DUST) best = next;
    });
  });
  return best;
}

function dividedAnew(about: About, assignment: Assignment, slot: number, division: Division): DividedProgram | null {
  about.effort.work -= STEPS_OF_A_DIVISION;
  return divideRuns(about.ground, assignment, slot, division);
}

// What is known of each slot's program as its zones are now.
function knownOf(about: About, { options, slotOf, steps, patterns }: Assignment): readonly DividedSoFar[] {
  const known = about.known.get(options) ?? new Map<string, DividedSoFar>();
  about.known.set(options, known);
  const keys = patterns.map((pattern, slot) => `${slot} ${pattern?.mask}`);
  for (let zone = 0; zone < slotOf.length; zone += 1) {
    const slot = slotOf[zone] as number;
    if (slot >= 0) keys[slot] += ` ${zone}:${steps[zone]}`;
  }
  return keys.map((key) => {
    const before = known.get(key) ?? {};
    known.set(key, before);
    return before;
  });
}

function dividedOnce(known: DividedSoFar, division: Division, divide: () => DividedProgram | null): DividedProgram | null {
  const before = known[division];
  if (before !== undefined) return before;
  const divided = divide();
  known[division] = divided;
  return divided;
}
