/** A source of evenly spread numbers from 0 up to, not including, 1. Whoever asks for a search brings one. */
export type RandomSource = () => number;

/**
 * A source of random numbers that is the same for the same seed on every machine (mulberry32).
 *
 * @param seed - A whole number; its lowest 32 bits count. [–]
 * @returns The source. [–]
 * @source Ettinger, T. (2017), mulberry32, public domain.
 */
export function seededRandom(seed: number): RandomSource {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}
