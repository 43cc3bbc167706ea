import { placeStarts, type SideBySide, START_STEP } from '../../layout/place-starts.js';
import { type Assignment, costOf, type Ground } from '../../pricing/assignment.js';
import type { EffortLeft } from '../../search/effort.js';
import { type DividedProgram, dividedSo, divideRuns, type Division } from './divide-runs.js';

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
  readonly known: Map<string, DividedProgram | null>;
  readonly effort: Pick<EffortLeft, 'layouts'>;
}

/** Ways to divide, and steps that starts are set to, in the order in which they are tried. */
const LAYOUTS: readonly (readonly [Division, number])[] = [
  ['fewest', START_STEP],
  ['more', START_STEP],
  ['closest', START_STEP],
  ['closest', 1],
];

/**
 * Divides and places an assignment in the first way that fits; in the closest where none does. What is more than a weekday has is not placed.
 *
 * @param about - What layouts share; its effort is taken from. [–]
 * @param assignment - The assignment. [–]
 * @returns Where its starts are, or by how much it is too long. [min]
 */
export function layOut(about: About, assignment: Assignment): FittedStarts {
  let last: FittedStarts | null = null;
  for (const [division, step] of LAYOUTS) {
    const divided = assignment.options.map((_, slot) => dividedOnce(about, assignment, slot, division));
    const excess = excessOfDays(about, divided);
    last = excess > DUST ? unplaced(about, assignment, divided, excess) : placed(about, assignment, divided, step);
    if (last.excess <= DUST) break;
  }
  return last as FittedStarts;
}

// Minutes beyond what a weekday has, however they are placed.
function excessOfDays({ ground, lanes }: About, divided: readonly (DividedProgram | null)[]): number {
  let most = 0;
  for (let bit = 1; bit < 128; bit <<= 1) {
    let minutes = 0;
    for (const program of divided) if (program && program.unplaced.mask & bit) minutes += program.unplaced.length * program.unplaced.starts;
    most = Math.max(most, minutes);
  }
  return Math.max(0, most - ground.frame.hours.minutes * lanes);
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

function dividedOnce({ ground, known }: About, assignment: Assignment, slot: number, division: Division): DividedProgram | null {
  const { slotOf, steps, patterns } = assignment;
  let key = `${division} ${slot} ${patterns[slot]?.mask}`;
  for (let zone = 0; zone < slotOf.length; zone += 1) if (slotOf[zone] === slot) key += ` ${zone}:${steps[zone]}`;
  const before = known.get(key);
  if (before !== undefined) return before;
  const divided = divideRuns(ground, assignment, slot, division);
  known.set(key, divided);
  return divided;
}
