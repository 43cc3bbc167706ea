import { type Assignment, costOf, type Ground, programLimit } from '../pricing/assignment.js';
import { coreProblem, type Priced } from './core-problem.js';
import { leafBound, type LeafChoice } from './leaf-bound.kernel.js';
import { searchCore } from './leaf-core.kernel.js';
import { leafProblem, type PricedMeeting, runsOf, waysToMeet } from './leaf-problem.js';
import type { Meeting } from './meetings.js';
import type { SlotOption } from '../pricing/slots.js';

const ROUNDS = 80;
/** Steps of work that one choice of a run counts as. */
const STEPS_OF_A_NODE = 25;

/** A leaf looked through: nothing in it costs less than the bound; what betters the known, if anything; and what the look cost. */
export interface ClosedLeaf {
  readonly bound: number;
  readonly better: { readonly assignment: Assignment; readonly cost: number } | null;
  readonly nodes: number;
  readonly work: number;
}

interface Asked {
  readonly known: number;
  readonly gap: number;
  readonly mostNodes: number;
  readonly mostWork: number;
}

/**
 * Looks through all that a leaf holds (what each slot is given): every way that its programs can meet on a day, and in each all runs of all
 * zones that can still better what is known.
 *
 * @param ground - Zones, slots and limits. [–]
 * @param options - What each slot is given; null is unused. [–]
 * @param asked - Cost of what is known, the share by which it is to be bettered, choices to look at, and steps of work. [–]
 * @returns The bound, and something better where there is any; a bound of minus infinity where there are too many ways to meet. [–]
 */
export function closeLeaf(ground: Ground, options: readonly (SlotOption | null)[], asked: Asked): ClosedLeaf {
  const { known, gap, mostNodes, mostWork } = asked;
  const ways = waysToMeet(ground, options);
  if (!ways) return { bound: Number.NEGATIVE_INFINITY, better: null, nodes: 0, work: 0 };
  let best: ClosedLeaf = { bound: Number.POSITIVE_INFINITY, better: null, nodes: 0, work: 0 };
  for (const way of ways) {
    if (best.work >= mostWork) return { ...best, bound: Number.NEGATIVE_INFINITY };
    const cost = best.better?.cost ?? known;
    const of = closeWay(ground, options, way, { known: cost, gap, mostNodes: mostNodes - best.nodes, mostWork });
    best = {
      bound: Math.min(best.bound, of.bound),
      better: of.better ?? best.better,
      nodes: best.nodes + of.nodes,
      work: best.work + of.work,
    };
  }
  return best;
}

function closeWay(
  ground: Ground,
  options: readonly (SlotOption | null)[],
  { patterns, together, prices }: PricedMeeting,
  asked: Asked,
): ClosedLeaf {
  const { known, gap, mostNodes } = asked;
  const alone = options.flatMap((option, slot) => (option ? [1 << slot] : []));
  const sets = Int32Array.from([...alone, ...together]);
  const limits = Float64Array.from([
    ...options.flatMap((option) => (option ? [programLimit(ground, option)] : [])),
    ...together.map(() => ground.perDay),
  ]);
  const presses = ground.frame.weights.keyPress * options.reduce((sum, option) => sum + (option?.presses ?? 0), 0);
  const taken: LeafChoice = { program: new Int32Array(ground.zones.length), steps: new Int32Array(ground.zones.length), prices };
  const below = known * (1 - gap);
  const weights = Float64Array.from([...sets].flatMap((set) => options.map((_, slot) => (set >> slot) & 1)));
  const problem = { ...leafProblem(ground, options).problem, limits, weights };
  const bound = presses + leafBound(problem, known - presses, below - presses, ROUNDS, taken);
  const work = ROUNDS * runsOf(problem);
  if (bound >= below) return { bound: below, better: null, nodes: 0, work };
  if (mostNodes <= 0) return { bound, better: null, nodes: 0, work };
  const found = searched(ground, options, { limits, sets, prices, base: bound, below }, { patterns, gap, mostNodes });
  return { ...found, work: work + found.nodes * STEPS_OF_A_NODE };
}

interface Search {
  readonly patterns: Meeting['patterns'];
  readonly gap: number;
  readonly mostNodes: number;
}

function searched(ground: Ground, options: readonly (SlotOption | null)[], priced: Priced, search: Search): Omit<ClosedLeaf, 'work'> {
  const { problem, zoneAt } = coreProblem(ground, options, priced);
  const written = new Int32Array(zoneAt.length);
  const { cost, nodes, isWhole } = searchCore(problem, priced.below, search.gap, search.mostNodes, written);
  const bound = isWhole ? Math.min(priced.below, cost * (1 - search.gap)) : priced.base;
  if (cost === Number.POSITIVE_INFINITY) return { bound, better: null, nodes };
  const [slotOf, steps] = [new Array<number>(zoneAt.length).fill(-1), new Array<number>(zoneAt.length).fill(0)];
  zoneAt.forEach((zone, at) => {
    slotOf[zone] = problem.program[written[at] as number] as number;
    steps[zone] = problem.steps[written[at] as number] as number;
  });
  const assignment = { options, patterns: search.patterns, slotOf, steps };
  return { bound, better: { assignment, cost: costOf(ground, assignment) }, nodes };
}
