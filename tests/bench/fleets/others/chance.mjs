// Chances and instants of the other worlds.

/** Uniform numbers from 0 to 1: a linear congruential generator modulo 2^48, its upper bits (drand48). */
export function chanceOf(text) {
  let state = [...text].reduce((sum, letter) => (sum * 31n + BigInt(letter.codePointAt(0))) & 0xffff_ffff_ffffn, 0x5deece66dn);
  const next = () => {
    state = (state * 0x5deece66dn + 11n) & 0xffff_ffff_ffffn;
    return Number(state >> 16n) / 2 ** 32;
  };
  for (let warm = 0; warm < 8; warm += 1) next();
  const between = (low, high) => low + (high - low) * next();
  return {
    next,
    between,
    whole: (low, high) => Math.floor(between(low, high + 1)),
    // Sum of twelve uniform numbers: mean 0, variance 1.
    normal: () => Array.from({ length: 12 }, next).reduce((sum, value) => sum + value, -6),
    of: (list) => list[Math.floor(next() * list.length)],
  };
}

export const dateOf = (day) => new Date(day * 86_400_000).toISOString().slice(0, 10);
export const instantOf = (minute) => new Date(minute * 60_000).toISOString().slice(0, 16);
