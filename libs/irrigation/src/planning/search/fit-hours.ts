import type { Assignment, Ground } from '../pricing/assignment.js';
import { cheapestMove, movingRuns, type Move, type Moving } from './cheapest-move.kernel.js';
import type { EffortLeft } from './effort.js';
import { excessNow, hoursTaken, take } from './hours-taken.kernel.js';
import { turnDays } from './turn-days.js';

const MOST_ROUNDS = 200;
/** Steps of work that a look at one move counts as. */
const STEPS_OF_A_LOOK = 11;

/** Where the search for moves stands: slots, steps and minutes are changed as it goes. */
interface Stand extends Moving {
  readonly slotOf: number[];
  readonly steps: number[];
}

/**
 * Makes an assignment fit into the hours, and then as cheap as single moves can: first the moves that free a minute for least, then those
 * that cost less and still fit.
 *
 * @param ground - Zones, slots and limits. [–]
 * @param wished - An assignment that may be too long. [–]
 * @param effort - What may be looked at; changed to what is left. Where nothing is, it fits all the same. [–]
 * @returns One that fits. [–]
 */
export function fitHours(ground: Ground, wished: Assignment, effort: Pick<EffortLeft, 'work'>): Assignment {
  const turned = turnDays(ground, wished);
  const { options, patterns } = turned;
  const used = options.map((option, slot) => (patterns[slot] ? option : null));
  const stand: Stand = {
    ground,
    options: used,
    slotOf: [...turned.slotOf],
    steps: [...turned.steps],
    hours: hoursTaken(ground, turned),
    runs: movingRuns(ground, used),
    looked: 0,
  };
  shorten(stand);
  cheapen(stand, effort.work);
  effort.work -= stand.looked * STEPS_OF_A_LOOK;
  return { options, patterns, slotOf: stand.slotOf, steps: stand.steps };
}

function shorten(stand: Stand): void {
  const { hours } = stand;
  const best: Move = { zone: -1, slot: -1, steps: 0 };
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const excess = excessNow(hours);
    if (excess === 0) return;
    if (!cheapestMove(stand, excess, best)) break;
    make(stand, best);
  }
  if (excessNow(hours) === 0) return;
  stand.slotOf.fill(-1);
  stand.steps.fill(0);
  hours.minutes.fill(0);
  hours.loads.fill(0);
}

function cheapen(stand: Stand, work: number): void {
  const best: Move = { zone: -1, slot: -1, steps: 0 };
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    if (stand.looked * STEPS_OF_A_LOOK >= work || !cheapestMove(stand, 0, best)) return;
    make(stand, best);
  }
}

function minutesAt({ ground, options }: Stand, slot: number, steps: number): number {
  return steps * ground.frame.step * (options[slot]?.starts ?? 0);
}

function make(stand: Stand, { zone, slot, steps }: Readonly<Move>): void {
  const from = stand.slotOf[zone] as number;
  if (from >= 0) take(stand.hours, from, -minutesAt(stand, from, stand.steps[zone] as number));
  if (slot >= 0) take(stand.hours, slot, minutesAt(stand, slot, steps));
  stand.slotOf[zone] = slot;
  stand.steps[zone] = steps;
}
