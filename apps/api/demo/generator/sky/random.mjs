// One stream of numbers per name: a change in one property's story does not move the dice of another.

function seedOf(name) {
  let hash = 2_166_136_261;
  for (const char of name) hash = Math.imul(hash ^ char.codePointAt(0), 16_777_619);
  return hash >>> 0;
}

/**
 * @param {string} name what the stream is for
 * @returns a uniform, a normal, a range and a choice, all from the same stream
 */
export function diceFor(name) {
  let state = seedOf(name);
  const uniform = () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
  // The sum of twelve uniforms is close to normal, and needs no logarithm whose last bit could differ between machines.
  const normal = () => {
    let sum = -6;
    for (let i = 0; i < 12; i += 1) sum += uniform();
    return sum;
  };
  return {
    uniform,
    normal,
    between: (low, high) => low + (high - low) * uniform(),
    whole: (low, high) => Math.floor(low + (high - low + 1) * uniform()),
    pick: (list) => list[Math.floor(uniform() * list.length)],
  };
}
