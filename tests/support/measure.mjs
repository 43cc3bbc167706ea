// How long work takes: the median of several runs after a warm-up.

/** The value at a share of a sorted list, nearest rank. */
export function percentile(values, share) {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.ceil(share * sorted.length) - 1)];
}

/** Milliseconds of each of several runs, after some that do not count. */
export async function times(work, { warmUps = 2, runs = 7 } = {}) {
  const all = [];
  for (let run = -warmUps; run < runs; run++) {
    const begun = performance.now();
    await work();
    if (run >= 0) all.push(performance.now() - begun);
  }
  return all;
}

/** The medians of several kinds of work [ms], run in turn so that whatever else the machine does meets them alike. */
export async function medians(works, { warmUps = 2, runs = 7 } = {}) {
  const all = Object.fromEntries(Object.keys(works).map((name) => [name, []]));
  for (let run = -warmUps; run < runs; run++)
    for (const [name, work] of Object.entries(works)) {
      const [took] = await times(work, { warmUps: 0, runs: 1 });
      if (run >= 0) all[name].push(took);
    }
  return Object.fromEntries(Object.entries(all).map(([name, values]) => [name, percentile(values, 0.5)]));
}

export const count = (value) => Math.round(value).toLocaleString('en-US');
export const ratio = (value) => `${value.toFixed(2)}×`;
