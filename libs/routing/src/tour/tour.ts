/**
 * A round trip through all places as an order that can be turned: `order` says who stands where, `place` where each stands.
 *
 * Every change is made of one move, so that it can be taken back.
 */
export class Tour {
  readonly order: Int32Array;
  readonly place: Int32Array;
  readonly #size: number;

  /**
   * Makes the tour.
   *
   * @param order - Every place once. [–]
   */
  constructor(order: ArrayLike<number>) {
    this.#size = order.length;
    this.order = Int32Array.from(order);
    this.place = new Int32Array(this.#size);
    for (const [at, one] of this.order.entries()) this.place[one] = at;
  }

  next(one: number): number {
    const at = (this.place[one] as number) + 1;
    return this.order[at === this.#size ? 0 : at] as number;
  }

  previous(one: number): number {
    const at = this.place[one] as number;
    return this.order[at === 0 ? this.#size - 1 : at - 1] as number;
  }

  // Replaces the steps a–b and c–d by a–c and b–d; b follows a as d follows c, both forward or both backward.
  exchange(a: number, b: number, c: number, d: number): void {
    if (this.next(a) === b) this.#turn(this.place[b] as number, this.place[c] as number);
    else this.#turn(this.place[a] as number, this.place[d] as number);
  }

  // Turns the order from one position to another round; the shorter side of the circle is the one that is moved.
  #turn(from: number, to: number): void {
    const size = this.#size;
    const length = to >= from ? to - from + 1 : to - from + 1 + size;
    if (2 * length <= size) this.#swap(from, to, length >> 1);
    else this.#swap(to + 1 === size ? 0 : to + 1, from === 0 ? size - 1 : from - 1, (size - length) >> 1);
  }

  #swap(from: number, to: number, swaps: number): void {
    const { order, place } = this;
    const size = this.#size;
    let left = from;
    let right = to;
    for (let swap = 0; swap < swaps; swap += 1) {
      const one = order[left] as number;
      const other = order[right] as number;
      order[left] = other;
      place[other] = left;
      order[right] = one;
      place[one] = right;
      left = left + 1 === size ? 0 : left + 1;
      right = right === 0 ? size - 1 : right - 1;
    }
  }
}
