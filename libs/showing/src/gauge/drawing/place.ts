export interface Wanted {
  /** Where its top would best be. */
  readonly top: number;
  readonly height: number;
  /** How much it matters that it stays there; 1 unless told. */
  readonly weight?: number;
}

interface Pool {
  sum: number;
  weight: number;
  count: number;
}

/**
 * Places labels one below the other in the order given, never closer than `gap`, as near to where they want to be as that allows
 * (least squares, by pooling neighbours that would cross), inside `low … high`.
 *
 * The caller gives room for all of them: what does not fit runs past `high`, but still does not overlap.
 */
export function placed(labels: readonly Wanted[], gap: number, low: number, high: number): number[] {
  let offset = 0;
  const offsets = labels.map((label) => {
    const mine = offset;
    offset += label.height + gap;
    return mine;
  });
  const pools: Pool[] = [];
  labels.forEach((label, place) => {
    const weight = label.weight ?? 1;
    let pool: Pool = { sum: (label.top - (offsets[place] ?? 0)) * weight, weight, count: 1 };
    for (let above = pools.at(-1); above && above.sum / above.weight > pool.sum / pool.weight; above = pools.at(-1)) {
      pools.pop();
      pool = { sum: above.sum + pool.sum, weight: above.weight + pool.weight, count: above.count + pool.count };
    }
    pools.push(pool);
  });
  const last = Math.max(low, high - (offset - gap));
  const starts = pools.flatMap((pool) => Array.from({ length: pool.count }, () => Math.min(last, Math.max(low, pool.sum / pool.weight))));
  return starts.map((start, place) => start + (offsets[place] ?? 0));
}

/** The height that a column of labels needs. */
export const columnHeight = (labels: readonly { readonly height: number }[], gap: number): number =>
  labels.reduce((sum, label) => sum + label.height + gap, 0) - (labels.length > 0 ? gap : 0);
