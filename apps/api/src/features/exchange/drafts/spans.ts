/** Spans of one owner that touch, as one; `first` and `last` are the lines of its earliest and latest part. */
interface Stretch {
  start: number;
  end: number;
  first: number;
  last: number;
}

/** A span that another one overlaps: the line to name, and its bounds. */
export interface Overlap {
  readonly line: number;
  readonly start: number;
  readonly end: number;
}

/**
 * Spans that must not overlap, by owner. Those that touch are kept as one stretch, so that a year of hours is one entry;
 * an overlap within a long stretch therefore names the line of its nearer end.
 */
export class Spans {
  private readonly owners = new Map<string, Stretch[]>();

  /** Adds a span, or says which earlier one it overlaps. */
  add(owner: string, start: number, end: number, line: number): Overlap | null {
    const stretches = this.owners.get(owner) ?? [];
    this.owners.set(owner, stretches);
    const at = firstEndingAtOrAfter(stretches, start);
    const touchesBefore = stretches[at]?.end === start;
    const before = touchesBefore ? stretches[at] : undefined;
    const after = stretches[touchesBefore ? at + 1 : at];
    if (after && after.start < end) return overlapWith(after, start, end);
    if (after && after.start === end) this.extendDown(stretches, at, before, after, { start, line });
    else if (before) Object.assign(before, { end, last: line });
    else stretches.splice(at, 0, { start, end, first: line, last: line });
    return null;
  }

  /** The span ends where `after` begins; where it also begins where `before` ends, the two become one. */
  private extendDown(
    stretches: Stretch[],
    at: number,
    before: Stretch | undefined,
    after: Stretch,
    span: { start: number; line: number },
  ): void {
    if (!before) {
      Object.assign(after, { start: span.start, first: span.line });
      return;
    }
    Object.assign(before, { end: after.end, last: after.last });
    stretches.splice(at + 1, 1);
  }
}

function overlapWith(stretch: Stretch, start: number, end: number): Overlap {
  const nearerEnd = Math.abs(stretch.end - end) <= Math.abs(start - stretch.start);
  return { line: nearerEnd ? stretch.last : stretch.first, start: stretch.start, end: stretch.end };
}

function firstEndingAtOrAfter(stretches: readonly Stretch[], start: number): number {
  let low = 0;
  let high = stretches.length;
  // Files are mostly in order of time.
  const last = stretches[high - 1];
  if (last && last.end < start) return high;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((stretches[middle] as Stretch).end < start) low = middle + 1;
    else high = middle;
  }
  return low;
}
