/**
 * What is left of what may be looked at: partial choices of days, whole ones, choices of runs, and ways to lay starts and soaks into the hours.
 * Every search for a controller takes from it.
 *
 * `work` counts the steps of all inner loops, whichever search they belong to: where it is used up, what has been found is given. It is counted
 * and not timed, so that the same question has the same answer on every machine.
 */
export interface EffortLeft {
  work: number;
  nodes: number;
  visits: number;
  looks: number;
  layouts: number;
}

/** What all searches for an answer may take together. */
export const FOR_AN_ANSWER: Readonly<EffortLeft> = { work: 60_000_000, nodes: 60_000, visits: 1_200, looks: 80_000, layouts: 600 };

/** Limits times programs of a whole choice of days that count as one visit; more of them count as more. */
const CELLS_OF_A_VISIT = 96;
/** Zones of a controller that count as one visit; more of them count as more. */
const ZONES_OF_A_VISIT = 8;

/**
 * What looking at one whole choice of days counts.
 *
 * @param cells - Its limits times its programs. [–]
 * @param zones - Zones of the controller. [–]
 * @returns Visits, one at least. [–]
 */
export function visitsOf(cells: number, zones: number): number {
  return Math.max(1, cells / CELLS_OF_A_VISIT) * Math.max(1, zones / ZONES_OF_A_VISIT);
}

/**
 * Gives one of several searches its share of what is left, and takes away what it has looked at.
 *
 * @param left - What is left, changed. [–]
 * @param share - The share. [–]
 * @param search - Is given its part, and changes it to what is left of it. [–]
 * @returns What the search found. [–]
 */
export function inPart<Result>(left: EffortLeft, share: number, search: (part: EffortLeft) => Result): Result {
  const { layouts } = left;
  const [nodes, looks] = [Math.floor(left.nodes * share), Math.floor(left.looks * share)];
  const given = { work: left.work * share, nodes, visits: left.visits * share, looks, layouts };
  const part = { ...given };
  const found = search(part);
  left.work -= given.work - part.work;
  left.nodes -= given.nodes - part.nodes;
  left.visits -= given.visits - part.visits;
  left.looks -= given.looks - part.looks;
  return found;
}

/**
 * Takes what a search has looked at.
 *
 * @param left - What is left, changed. [–]
 * @param spent - Partial choices, and steps of work. [–]
 * @returns Nothing. [–]
 */
export function spend(left: EffortLeft, spent: Pick<EffortLeft, 'nodes' | 'work'>): void {
  left.nodes = Math.max(0, left.nodes - spent.nodes);
  left.work -= spent.work;
}

/**
 * Lets a search take no more than its share of the work that is left; of all else it may take what there is.
 *
 * @param left - What is left, changed. [–]
 * @param share - The share of the work. [–]
 * @param search - Is given what it may take, and changes it. [–]
 * @returns What the search found. [–]
 */
export function inShareOfWork<Result>(left: EffortLeft, share: number, search: (left: EffortLeft) => Result): Result {
  const kept = left.work * (1 - share);
  left.work -= kept;
  const found = search(left);
  left.work += kept;
  return found;
}
