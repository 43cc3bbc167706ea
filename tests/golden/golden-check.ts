import { expect } from 'vitest';

/** What a published example gives: a number, a word, or a row of either. */
export type GoldenValue = number | string | readonly (number | string)[];

/** A value with the unit that it is published in; '' where it has none. */
export type GoldenQuantity = readonly [value: GoldenValue, unit: string];

/**
 * One published example, transcribed: inputs and results as printed, in the units of the source.
 *
 * `tolerance` is by result (with `_rel` behind its name where relative), or `abs` or `rel` for all of them, or `exact`, or
 * `not_below` where the source says 'more than'. `leftOut` names the results that are not computed here, with why.
 */
export interface GoldenCheck {
  readonly source: string;
  readonly known: 'text' | 'library-test' | 'memory';
  readonly inputs: Readonly<Record<string, GoldenQuantity>>;
  readonly expected: Readonly<Record<string, GoldenQuantity>>;
  readonly tolerance: Readonly<Record<string, number | string | boolean>>;
  readonly note?: string;
  readonly leftOut?: Readonly<Record<string, string>>;
}

/** Checks by the identifier under which the collection of published numbers keeps them. */
export type GoldenChecks = Readonly<Record<string, GoldenCheck>>;

/** Demands that every published result of a check was computed and lies within its tolerance; says which one does not. */
export function expectGolden(check: GoldenCheck, computed: Readonly<Record<string, GoldenValue>>): void {
  const wanted = Object.keys(check.expected).filter((name) => !(name in (check.leftOut ?? {})));
  expect(wanted.length, 'nothing is compared').toBeGreaterThan(0);
  expect(Object.keys(computed)).toEqual(expect.arrayContaining(wanted));
  for (const name of wanted) compare(check, name, computed[name] as GoldenValue);
}

/** A number among the inputs of a check. */
export function given(check: GoldenCheck, name: string): number {
  const value = check.inputs[name]?.[0];
  if (typeof value !== 'number') throw new Error(`the check gives no number ${name}`);
  return value;
}

/** A row of numbers among the inputs of a check. */
export function givenRow(check: GoldenCheck, name: string): readonly number[] {
  const value = check.inputs[name]?.[0];
  if (!Array.isArray(value) || value.some((each) => typeof each !== 'number')) throw new Error(`the check gives no row of numbers ${name}`);
  return value as readonly number[];
}

function compare(check: GoldenCheck, name: string, actual: GoldenValue): void {
  const published = rowOf(check.expected[name]?.[0] as GoldenValue);
  const row = rowOf(actual);
  expect(row.length, `${name} has ${row.length} values, published are ${published.length}`).toBe(published.length);
  published.forEach((value, at) => {
    const got = row[at];
    if (typeof value === 'string') expect(got, name).toBe(value);
    else within(check, name, got, value);
  });
}

function within(check: GoldenCheck, name: string, got: number | string | undefined, published: number): void {
  if (check.tolerance['not_below'] === true) {
    expect(Number(got) >= published, `${name}: ${got} is below the published ${published}`).toBe(true);
    return;
  }
  const allowed = allowance(check, name, published);
  const off = Math.abs(Number(got) - published);
  expect(off <= allowed, `${name}: ${got} is ${off} away from the published ${published} (allowed ${allowed})`).toBe(true);
}

function allowance({ tolerance }: GoldenCheck, name: string, published: number): number {
  const own = tolerance[name] ?? tolerance['abs'] ?? tolerance['default_abs'];
  if (typeof own === 'number') return own;
  const relative = tolerance[`${name}_rel`] ?? tolerance['rel'];
  if (typeof relative === 'number') return relative * Math.abs(published);
  if (tolerance['exact']) return 0;
  throw new Error(`the check has no tolerance for ${name}`);
}

const rowOf = (value: GoldenValue): readonly (number | string)[] => (typeof value === 'object' ? value : [value]);
