/**
 * What zones may be given in one program whose days are settled: of zone i at `from[i]` to `from[i + 1]`, each with its price and its minutes on
 * a day of the program.
 */
export interface LeafColumn {
  readonly from: Int32Array;
  readonly steps: Int32Array;
  readonly price: Float64Array;
  readonly minutes: Float64Array;
}

/**
 * Zones to be given to programs whose days are settled; null is an unused program, `dry[zone]` what no water costs. Of `limits` each bounds a
 * weighted sum of the programs' minutes: `weights[limit * programs + program]`.
 */
export interface LeafProblem {
  readonly columns: readonly (LeafColumn | null)[];
  readonly dry: Float64Array;
  readonly limits: Float64Array;
  readonly weights: Float64Array;
}

/** Takes of each zone its program (-1: dry) and its steps; holds the prices of the limits' minutes to begin with, and takes the best. */
export interface LeafChoice {
  readonly program: Int32Array;
  readonly steps: Int32Array;
  readonly prices: Float64Array;
}

/**
 * Lagrangian bound of one leaf: each limit's minutes get a price, raised where they are exceeded and lowered where they are not (steps after
 * Polyak); the cheapest choice at any prices, less what the limits are worth, is a bound.
 *
 * @param problem - Choices and limits. [min]
 * @param known - Cost of a choice that keeps the limits. [–]
 * @param enough - Where the bound reaches this, the leaf is closed and the work ends. [–]
 * @param rounds - Prices that are tried. [–]
 * @param written - Takes the choice and prices at the best bound. [–]
 * @returns The best bound. [–]
 * @source Polyak, B. T. (1969): minimization of unsmooth functionals (from memory).
 */
export function leafBound(problem: LeafProblem, known: number, enough: number, rounds: number, written: LeafChoice): number {
  const { columns, dry, limits, weights } = problem;
  const programs = columns.length;
  const zones = dry.length;
  const prices = Float64Array.from(written.prices);
  const over = new Float64Array(limits.length);
  const perMinute = new Float64Array(programs);
  const used = new Float64Array(programs);
  const program = new Int32Array(zones);
  const steps = new Int32Array(zones);
  const taken = new Float64Array(4);
  let best = Number.NEGATIVE_INFINITY;
  let boldness = 1.2;
  let stale = 0;
  for (let round = 0; round < rounds; round += 1) {
    perMinute.fill(0);
    used.fill(0);
    let bound = 0;
    for (let at = 0; at < weights.length; at += 1) {
      const program = at % programs;
      perMinute[program] = (perMinute[program] as number) + (prices[Math.floor(at / programs)] as number) * (weights[at] as number);
    }
    for (let limit = 0; limit < limits.length; limit += 1) bound -= (prices[limit] as number) * (limits[limit] as number);
    for (let zone = 0; zone < zones; zone += 1) {
      cheapest(columns, zone, perMinute, taken, dry[zone] as number);
      bound += taken[PRICE] as number;
      const where = taken[PROGRAM] as number;
      program[zone] = where;
      steps[zone] = taken[STEPS] as number;
      if (where >= 0) used[where] = (used[where] as number) + (taken[MINUTES] as number);
    }
    if (bound > best + 1e-9) {
      best = bound;
      written.program.set(program);
      written.steps.set(steps);
      written.prices.set(prices);
      stale = 0;
    } else {
      stale = (stale + 1) % 3;
      if (stale === 0) boldness /= 2;
    }
    if (best >= enough || boldness < 0.02) break;
    let norm = 0;
    for (let limit = 0; limit < limits.length; limit += 1) {
      let sum = -(limits[limit] as number);
      for (let at = 0; at < programs; at += 1) sum += (weights[limit * programs + at] as number) * (used[at] as number);
      over[limit] = sum;
      if (sum > 0 || (prices[limit] as number) > 0) norm += sum * sum;
    }
    if (norm < 1e-12) break;
    const step = (boldness * Math.max(known - bound, 1e-6)) / norm;
    for (let limit = 0; limit < limits.length; limit += 1) {
      prices[limit] = Math.max(0, (prices[limit] as number) + step * (over[limit] as number));
    }
  }
  return best;
}

const [PRICE, PROGRAM, STEPS, MINUTES] = [0, 1, 2, 3] as const;

// The cheapest program and run of a zone at some prices of minutes; dry where none is cheaper.
function cheapest(columns: LeafProblem['columns'], zone: number, perMinute: Float64Array, written: Float64Array, dry: number): void {
  let [least, where, found] = [dry, -1, -1];
  for (let at = 0; at < columns.length; at += 1) {
    const column = columns[at];
    if (!column) continue;
    const worth = perMinute[at] as number;
    const end = column.from[zone + 1] as number;
    for (let run = column.from[zone] as number; run < end; run += 1) {
      const cost = (column.price[run] as number) + worth * (column.minutes[run] as number);
      if (cost < least) [least, where, found] = [cost, at, run];
    }
  }
  const column = where < 0 ? null : columns[where];
  written[PRICE] = least;
  written[PROGRAM] = where;
  written[STEPS] = column ? (column.steps[found] as number) : 0;
  written[MINUTES] = column ? (column.minutes[found] as number) : 0;
}
