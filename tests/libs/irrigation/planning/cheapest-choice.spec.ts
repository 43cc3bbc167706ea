import { cheapestChoice } from '@rillbook/irrigation/planning/search/choices/cheapest-choice.js';
import type { ChoiceProblem } from '@rillbook/irrigation/planning/search/choices/choose-options.kernel.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const ZONES = 4;
const WHOLE = { nodes: 1e6, work: 1e9 };

/** A few slots of a few options with small whole costs, so that many cost the same; some zones are not allowed some options. */
const problems = fc
  .record({
    options: fc.array(fc.integer({ min: 1, max: 5 }), { minLength: 1, maxLength: 3 }),
    numbers: fc.infiniteStream(fc.integer({ min: 0, max: 9 })),
    areAlike: fc.boolean(),
  })
  .map(({ options, numbers, areAlike }): ChoiceProblem => {
    const next = () => numbers.next().value;
    const cost = () => {
      const value = next();
      return value === 9 ? Number.POSITIVE_INFINITY : value;
    };
    const written = options.map((count) => ({
      costs: Float64Array.from({ length: count * ZONES }, cost),
      fixed: Float64Array.from({ length: count }, next),
    }));
    const slots = areAlike ? written.map(() => written[0] as (typeof written)[number]) : written;
    return {
      zones: ZONES,
      costs: slots.map(({ costs }) => costs),
      fixed: slots.map(({ fixed }) => fixed),
      dry: Float64Array.from({ length: ZONES }, next),
      sameAs: slots.map((_, at) => (areAlike ? -1 : at)),
    };
  });

const costOf = ({ zones, costs, fixed, dry }: ChoiceProblem, options: readonly number[]) => {
  const ofOptions = options.reduce((sum, option, slot) => sum + (option < 0 ? 0 : (fixed[slot]?.[option] ?? 0)), 0);
  const leastOf = (zone: number) =>
    Math.min(
      dry[zone] ?? 0,
      ...options.map((option, slot) => (option < 0 ? Number.POSITIVE_INFINITY : (costs[slot]?.[option * zones + zone] ?? 0))),
    );
  return Array.from({ length: zones }, (_, zone) => leastOf(zone)).reduce((sum, least) => sum + least, ofOptions);
};

const allChoices = ({ fixed }: ChoiceProblem) =>
  fixed.reduce<readonly (readonly number[])[]>(
    (before, { length }) => before.flatMap((options) => Array.from({ length: length + 1 }, (_, at) => [...options, at - 1])),
    [[]],
  );

describe('the cheapest choice', () => {
  it('is as cheap as the cheapest of all choices, and names options of the whole problem', () => {
    fc.assert(
      fc.property(problems, (problem) => {
        const found = cheapestChoice(problem, { options: problem.fixed.map(() => -1), cost: Number.POSITIVE_INFINITY }, WHOLE);
        const least = Math.min(...allChoices(problem).map((options) => costOf(problem, options)));
        expect(found.cost).toBe(least);
        expect(costOf(problem, found.options)).toBe(least);
      }),
      { numRuns: 300 },
    );
  });
});
