/**
 * What is left of a leaf at the prices of its bound: of zone i the runs at `from[i]` to `from[i + 1]`, each with what it costs above the
 * cheapest of its zone (in rising order), its program (-1: dry), its steps and its minutes on a day. Each limit holds the minutes of the
 * programs whose bits are in its set.
 */
export interface CoreProblem {
  readonly from: Int32Array;
  readonly above: Float64Array;
  readonly program: Int32Array;
  readonly steps: Int32Array;
  readonly minutes: Float64Array;
  readonly limits: Float64Array;
  readonly sets: Int32Array;
  readonly prices: Float64Array;
  readonly base: number;
}

/** The best found below what was asked for, if any, and whether the search came to its end. */
export interface CoreFound {
  readonly cost: number;
  readonly nodes: number;
  readonly isWhole: boolean;
}

const DUST = 1e-7;

/**
 * Looks through all runs of all zones that keep the limits, for one that costs less: depth first, a branch closed where the bound of the leaf
 * and what its runs cost above the cheapest reach what is known, or where a limit cannot hold.
 *
 * @param core - The runs that are left. [min]
 * @param below - Cost from which on nothing is of interest; each cheaper choice lowers it by the share `gap`. [–]
 * @param gap - What a cheaper choice has to better the last by. [–]
 * @param mostNodes - Choices looked at before the search gives up. [–]
 * @param written - Takes the run of each zone, as an index. [–]
 * @returns What was found. [–]
 */
export function searchCore(core: CoreProblem, below: number, gap: number, mostNodes: number, written: Int32Array): CoreFound {
  const { from, above, program, minutes, limits, sets, prices, base } = core;
  const zones = from.length - 1;
  const count = limits.length;
  // What the zones from here on take of each limit at least and at most.
  const least = new Float64Array((zones + 1) * count);
  const most = new Float64Array((zones + 1) * count);
  for (let zone = zones - 1; zone >= 0; zone -= 1) {
    for (let limit = 0; limit < count; limit += 1) {
      let [low, high] = [Number.POSITIVE_INFINITY, 0];
      for (let run = from[zone] as number; run < (from[zone + 1] as number); run += 1) {
        const where = program[run] as number;
        const takes = where >= 0 && ((sets[limit] as number) >> where) & 1 ? (minutes[run] as number) : 0;
        low = Math.min(low, takes);
        high = Math.max(high, takes);
      }
      least[zone * count + limit] = (least[(zone + 1) * count + limit] as number) + low;
      most[zone * count + limit] = (most[(zone + 1) * count + limit] as number) + high;
    }
  }
  const used = new Float64Array((zones + 1) * count);
  const chosen = new Int32Array(zones);
  let [interest, cost, nodes, isWhole] = [below, Number.POSITIVE_INFINITY, 0, true];

  const visit = (zone: number, paid: number): void => {
    let idle = 0;
    for (let limit = 0; limit < count; limit += 1) {
      const left = (limits[limit] as number) - (used[zone * count + limit] as number) - (most[zone * count + limit] as number);
      if (left > 0) idle += left * (prices[limit] as number);
    }
    if (base + paid + idle >= interest - DUST) return;
    if (zone === zones) {
      cost = base + paid + idle;
      interest = cost - gap * Math.abs(cost);
      written.set(chosen);
      return;
    }
    for (let run = from[zone] as number; run < (from[zone + 1] as number); run += 1) {
      if (base + paid + (above[run] as number) >= interest - DUST) return;
      nodes += 1;
      if (nodes > mostNodes) {
        isWhole = false;
        return;
      }
      const where = program[run] as number;
      let fits = true;
      for (let limit = 0; limit < count; limit += 1) {
        const takes = where >= 0 && ((sets[limit] as number) >> where) & 1 ? (minutes[run] as number) : 0;
        const after = (used[zone * count + limit] as number) + takes;
        used[(zone + 1) * count + limit] = after;
        if (after + (least[(zone + 1) * count + limit] as number) > (limits[limit] as number) + DUST) fits = false;
      }
      if (!fits) continue;
      chosen[zone] = run;
      visit(zone + 1, paid + (above[run] as number));
      if (!isWhole) return;
    }
  };
  visit(0, 0);
  return { cost, nodes, isWhole };
}
