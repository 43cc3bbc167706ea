/**
 * What is left of what may be looked at: partial choices of days, whole ones, choices of runs, and ways to lay starts and soaks into the hours.
 * Every search for a controller takes from it.
 */
export interface EffortLeft {
  nodes: number;
  visits: number;
  looks: number;
  layouts: number;
}

/** What all searches for an answer may take together: half a second of a processor for ten programs. */
export const FOR_AN_ANSWER: Readonly<EffortLeft> = { nodes: 60_000, visits: 1_200, looks: 80_000, layouts: 600 };

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
  const given = { nodes: Math.floor(left.nodes * share), visits: left.visits * share, looks: Math.floor(left.looks * share), layouts };
  const part = { ...given };
  const found = search(part);
  left.nodes -= given.nodes - part.nodes;
  left.visits -= given.visits - part.visits;
  left.looks -= given.looks - part.looks;
  return found;
}
