import { Tour } from './tour.js';

/** What a gain must exceed, so that rounding never runs in circles. */
const LEAST_GAIN = 1e-9;

/** The longest piece of a tour that is moved elsewhere as one. */
const LONGEST_SEGMENT = 3;

/** Local search on one tour: 2-opt and Or-opt between near places, looking only at places that something has changed around. */
export class TourSearch {
  readonly tour: Tour;
  readonly #distances: Float64Array;
  readonly #size: number;
  readonly #near: readonly Int32Array[];
  readonly #queue: number[] = [];
  readonly #waits: Uint8Array;
  #log: number[] = [];

  /**
   * Sets the search up.
   *
   * @param distances - Symmetric distances, row by row. [any]
   * @param order - The tour to begin with. [–]
   * @param near - For each place its nearest others, nearest first. [–]
   */
  constructor(distances: Float64Array, order: ArrayLike<number>, near: readonly Int32Array[]) {
    this.tour = new Tour(order);
    this.#distances = distances;
    this.#size = order.length;
    this.#near = near;
    this.#waits = new Uint8Array(this.#size);
  }

  // Has a place looked at again.
  wake(one: number): void {
    if (this.#waits[one]) return;
    this.#waits[one] = 1;
    this.#queue.push(one);
  }

  // Improves until no place that was woken offers anything; returns the length saved.
  improve(): number {
    let saved = 0;
    for (let at = 0; at < this.#queue.length; at += 1) {
      const one = this.#queue[at] as number;
      this.#waits[one] = 0;
      for (let gain = this.#tryBoth(one); gain > 0; gain = this.#tryBoth(one)) saved += gain;
    }
    this.#queue.length = 0;
    return saved;
  }

  // Moves the stretch from b to c, which stands between a and d, between e and its follower; returns the length added.
  moveSegment(b: number, c: number, e: number, turned: boolean): number {
    const { tour } = this;
    const [a, d, f] = [tour.previous(b), tour.next(c), tour.next(e)];
    const distance = (one: number, other: number): number => this.#distances[one * this.#size + other] as number;
    const [first, last] = turned ? [c, b] : [b, c];
    const added = distance(a, d) + distance(e, first) + distance(last, f) - distance(a, b) - distance(c, d) - distance(e, f);
    this.#exchange(a, b, e, f);
    this.#exchange(a, e, d, c);
    if (!turned) this.#exchange(e, c, b, f);
    for (const one of [a, b, c, d, e, f]) this.wake(one);
    return added;
  }

  // Forgets how the tour came about, so that it can be taken back to here.
  keep(): void {
    this.#log = [];
  }

  // Takes back every change since `keep`.
  takeBack(): void {
    const log = this.#log;
    for (let at = log.length - 4; at >= 0; at -= 4) {
      this.tour.exchange(log[at] as number, log[at + 2] as number, log[at + 1] as number, log[at + 3] as number);
    }
    this.#log = [];
  }

  #exchange(a: number, b: number, c: number, d: number): void {
    if (a === c || b === d) return;
    this.tour.exchange(a, b, c, d);
    this.#log.push(a, b, c, d);
  }

  #tryBoth(one: number): number {
    const gain = this.#tryExchange(one, true) || this.#tryExchange(one, false);
    return gain || this.#trySegments(one);
  }

  // 2-opt: the step from a place to its neighbour in the tour against a step to a near place.
  #tryExchange(a: number, forward: boolean): number {
    const { tour } = this;
    const distances = this.#distances;
    const size = this.#size;
    const b = forward ? tour.next(a) : tour.previous(a);
    const step = distances[a * size + b] as number;
    for (const c of this.#near[a] as Int32Array) {
      const toNear = distances[a * size + c] as number;
      if (toNear >= step) return 0;
      const d = forward ? tour.next(c) : tour.previous(c);
      const gain = step + (distances[c * size + d] as number) - toNear - (distances[b * size + d] as number);
      if (gain > LEAST_GAIN && c !== b && d !== a) {
        this.#exchange(a, b, c, d);
        for (const woken of [a, b, c, d]) this.wake(woken);
        return gain;
      }
    }
    return 0;
  }

  // Or-opt: pieces of up to three places that begin or end at this one, moved beside a near place.
  #trySegments(one: number): number {
    for (const forward of [true, false]) {
      let other = one;
      for (let length = 1; length <= LONGEST_SEGMENT; length += 1) {
        if (length > 1) other = forward ? this.tour.next(other) : this.tour.previous(other);
        const [first, last] = forward ? [one, other] : [other, one];
        const gain = this.#trySegment(first, last, { one, length });
        if (gain > 0) return gain;
      }
    }
    return 0;
  }

  #trySegment(first: number, last: number, { one, length }: { readonly one: number; readonly length: number }): number {
    const { tour } = this;
    const distances = this.#distances;
    const size = this.#size;
    const [before, after] = [tour.previous(first), tour.next(last)];
    if (before === after || before === last) return 0;
    const other = one === first ? last : first;
    const freed =
      (distances[before * size + first] as number) +
      (distances[last * size + after] as number) -
      (distances[before * size + after] as number);
    for (const near of this.#near[one] as Int32Array) {
      const toNear = distances[one * size + near] as number;
      if (toNear >= freed) return 0;
      if (this.#within(near, first, length)) continue;
      for (const beside of [tour.next(near), tour.previous(near)]) {
        if (this.#within(beside, first, length)) continue;
        const gain = freed - toNear - (distances[other * size + beside] as number) + (distances[near * size + beside] as number);
        if (gain <= LEAST_GAIN) continue;
        const from = beside === tour.next(near) ? near : beside;
        return -this.moveSegment(first, last, from, (from === near) !== (one === first));
      }
    }
    return 0;
  }

  // Whether a place stands in the stretch of that length from `first` on.
  #within(one: number, first: number, length: number): boolean {
    const { place } = this.tour;
    const steps = (place[one] as number) - (place[first] as number);
    return (steps < 0 ? steps + this.#size : steps) < length;
  }
}
