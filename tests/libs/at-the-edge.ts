import { expect, it } from 'vitest';
import { refusalOf } from './refusal-of.js';

export type Formula = (...values: number[]) => unknown;

/** A formula, its code, the names of its values in the details, what is refused, and what stands at the edge with its result. */
export type Row = readonly [
  formula: Formula,
  code: string,
  names: readonly string[],
  refused: readonly (readonly number[])[],
  edges: readonly (readonly [readonly number[], unknown])[],
];

/** A function of plain numbers, whatever units its types give them. */
export const of = (formula: (...values: never[]) => unknown): Formula => formula as unknown as Formula;

/** Makes the tests of the rows: each refuses with code and values, and takes what stands at the edge. */
export const holdAtTheEdge = (rows: readonly Row[]): void => {
  const given = rows.map((row) => [`${row[1]} of ${row[2].join(', ')}`, ...row] as const);

  it.each(given)('%s: refuses with code and values', (_name, ...row) => {
    const [formula, code, names, refused] = row;
    for (const values of refused) {
      expect(refusalOf(() => formula(...values))).toEqual([code, Object.fromEntries(names.map((name, index) => [name, values[index]]))]);
    }
  });

  it.each(given)('%s: takes what stands at the edge', (_name, ...row) => {
    const [formula, , , , edges] = row;
    for (const [values, result] of edges) {
      const found = formula(...values);
      if (typeof result === 'number') expect(found).toBeCloseTo(result, 9);
      else expect(found).toEqual(result);
    }
  });
};
