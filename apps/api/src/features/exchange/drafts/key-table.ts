const FIRST_CAPACITY = 1024;

/**
 * Numbers by text keys in a few bytes each, for the million rows of a file: the keys themselves are not kept, only
 * 64 bits of them. Two different keys are taken for one with a chance of about 3 in 10^8 in a million rows.
 */
export class KeyTable {
  private capacity = FIRST_CAPACITY;
  private size = 0;
  private keys = new Uint32Array(FIRST_CAPACITY * 2);
  private values = new Uint32Array(FIRST_CAPACITY);

  /** The number under a key, 0 where there is none. */
  get(key: string): number {
    const [high, low] = hash(key);
    return this.values[this.slot(high, low)] ?? 0;
  }

  /** Puts a number above 0 under a key. */
  set(key: string, value: number): void {
    if (this.size * 2 >= this.capacity) this.grow();
    const [high, low] = hash(key);
    const slot = this.slot(high, low);
    if (this.values[slot] === 0) this.size += 1;
    this.put(slot, high, low, value);
  }

  /** Notes that a key stands on a line; gives the line on which it stood first, or null. */
  firstSeen(key: string, line: number): number | null {
    const before = this.get(key);
    if (before === 0) this.set(key, line);
    return before === 0 ? null : before;
  }

  private put(slot: number, high: number, low: number, value: number): void {
    this.keys[slot * 2] = high;
    this.keys[slot * 2 + 1] = low;
    this.values[slot] = value;
  }

  private slot(high: number, low: number): number {
    let slot = low & (this.capacity - 1);
    while (this.values[slot] !== 0 && (this.keys[slot * 2] !== high || this.keys[slot * 2 + 1] !== low))
      slot = (slot + 1) & (this.capacity - 1);
    return slot;
  }

  private grow(): void {
    const { keys, values, capacity } = this;
    this.capacity = capacity * 2;
    this.keys = new Uint32Array(this.capacity * 2);
    this.values = new Uint32Array(this.capacity);
    for (let at = 0; at < capacity; at += 1) {
      const [high = 0, low = 0, value = 0] = [keys[at * 2], keys[at * 2 + 1], values[at]];
      if (value !== 0) this.put(this.slot(high, low), high, low, value);
    }
  }
}

/** Two 32-bit multiplicative hashes, each mixed with the other at the end. */
function hash(key: string): readonly [number, number] {
  let a = 0xdeadbeef ^ key.length;
  let b = 0x41c6ce57;
  for (let at = 0; at < key.length; at += 1) {
    const code = key.charCodeAt(at);
    a = Math.imul(a ^ code, 2654435761);
    b = Math.imul(b ^ code, 1597334677);
  }
  a = Math.imul(a ^ (a >>> 16), 2246822507) ^ Math.imul(b ^ (b >>> 13), 3266489909);
  b = Math.imul(b ^ (b >>> 16), 2246822507) ^ Math.imul(a ^ (a >>> 13), 3266489909);
  return [a >>> 0, b >>> 0];
}

/** One key of several parts; the separator cannot stand in a name. */
export function keyOf(...parts: readonly (string | number | null)[]): string {
  return parts.join('\u0000');
}
