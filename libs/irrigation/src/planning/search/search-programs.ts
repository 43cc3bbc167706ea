import { type Assignment, costOf, excessOf, type Ground, minutesOfSlots } from '../pricing/assignment.js';
import { assigned, emptyChoice, leafOf } from '../leaf/leaf-choice.js';
import { leafBound } from '../leaf/leaf-bound.kernel.js';
import { leafProblem } from '../leaf/leaf-problem.js';
import { cheapestChoice } from './choices/cheapest-choice.js';
import { choiceProblem } from './choices/choice-problem.js';
import { type EffortLeft, spend } from './effort.js';
import { fitHours } from './fit-hours.js';
import { turnDays } from './turn-days.js';
import { type Sought, withinHours } from './within-hours.js';

const MOST_NODES = 20_000;
/** The choice without the hours is looked for with no less, even where the effort is used up: nothing could be offered else. */
const LEAST_NODES = 500;
const LEAST_WORK = 1_000_000;
/** Of the work that is left the share that it may take. [–] */
const SHARE_OF_FREE = 0.5;
/** What cannot better the best by more than this share is closed. [–] */
export const GOOD_GAP = 0.008;

/** The best programs found, others that came near, their cost, and a bound below which no programs are. */
export interface Found {
  readonly assignment: Assignment;
  readonly others: readonly Assignment[];
  readonly cost: number;
  readonly bound: number;
}

/**
 * Chooses days, starts and percent of every program, and program and minutes of every zone.
 *
 * Without the hours this is exact (branch and bound). Where the choice does not fit into the hours, every choice of days that can still be the
 * best gets a bound that counts the hours (Lagrange), and the promising ones are made to fit.
 *
 * @param ground - Zones, slots and limits. [–]
 * @param daysOpen - Weekdays on which any program may run. [d]
 * @param sought - Cost of programs that are known already, and how much may be looked at, changed to what is left. [–]
 * @returns The best that fits, and the bound; null where nothing can better what is known by a share worth it. [–]
 */
export function searchPrograms(ground: Ground, daysOpen: number, sought: Pick<Sought, 'known' | 'effort'>): Found | null {
  const { known, effort } = sought;
  const free = freeChoice(ground, effort);
  if (free.bound >= known * (1 - GOOD_GAP)) return null;
  const wished = turnDays(ground, free.assignment);
  if (excessOf(ground, wished, minutesOfSlots(ground, wished)) === 0) {
    return { assignment: wished, others: [], cost: costOf(ground, wished), bound: free.bound };
  }
  const fitted = fitHours(ground, wished, effort);
  const first = { assignment: fitted, others: [], cost: costOf(ground, fitted), bound: free.bound };
  return withinHours(ground, first, { known, gap: GOOD_GAP, weekly: daysOpen * ground.perDay, effort });
}

function freeChoice(ground: Ground, effort: EffortLeft): Found {
  const dry = { options: ground.slots.map(() => -1), cost: Number.POSITIVE_INFINITY };
  const most = {
    nodes: Math.max(LEAST_NODES, Math.min(MOST_NODES, effort.nodes)),
    work: Math.max(LEAST_WORK, effort.work * SHARE_OF_FREE),
  };
  const found = cheapestChoice(choiceProblem(ground, { any: 0, bound: 0 }), dry, most);
  spend(effort, found);
  const { options, cost } = found;
  const leaf = leafOf(ground, options);
  const taken = emptyChoice(ground, new Float64Array(0));
  leafBound(
    { ...leafProblem(ground, leaf).problem, limits: new Float64Array(0), weights: new Float64Array(0) },
    cost,
    Number.NEGATIVE_INFINITY,
    1,
    taken,
  );
  return { assignment: assigned(leaf, taken), others: [], cost, bound: Math.min(cost, found.leftOut) };
}
