/**
 * The worlds of a test, by their seeds. Mutation testing meets each change with the first alone: all of them are a minute for each change, and
 * what only the others would notice counts as not noticed.
 */
export const worlds = (...seeds: readonly number[]): readonly number[] => (process.env['MUTATED_LIBRARY'] ? seeds.slice(0, 1) : seeds);
