import type { ProblemCode } from '../problems/problem.js';

/** A cell that cannot be read: why, and what was expected, in words of the files. `found` where it is not the whole cell. */
export class Fault {
  constructor(
    readonly code: ProblemCode,
    readonly expected = '',
    readonly found?: string,
  ) {}
}

/**
 * A kind of cell: reads trimmed text that is not empty into a canonical value (SI), and writes a canonical value as text.
 * Writing and reading again gives the same value, to a billionth where a unit is converted.
 */
export interface Cell<Value> {
  read(text: string): Value | Fault;
  write(value: Value): string;
}

/** One column of a file: the field of the row that it fills, and what a blank cell means. */
export interface Column<Field extends string = string, Value = unknown> {
  readonly field: Field;
  readonly required: boolean;
  readonly cell: Cell<NonNullable<Value>>;
  /** The value of a blank cell, and of a column that is not there. */
  readonly blank: Value | null;
}

/** The columns of a file by their names, in the order in which they are written. */
export type Columns = Readonly<Record<string, Column>>;

/** A column that every row must fill. */
export function must<const Field extends string, Value>(field: Field, cell: Cell<Value>): Column<Field, NonNullable<Value>> {
  return { field, required: true, cell: cell as Cell<NonNullable<Value>>, blank: null };
}

/** A column that may be blank: the value is then unknown, null. */
export function may<const Field extends string, Value>(field: Field, cell: Cell<Value>): Column<Field, Value | null> {
  return { field, required: false, cell: cell as Cell<NonNullable<Value>>, blank: null };
}

/** A column whose blank means a value: what the contract of the import folder names, or what changes nothing (100 %, one cycle). */
export function or<const Field extends string, Value>(
  field: Field,
  cell: Cell<Value>,
  blank: NonNullable<Value>,
): Column<Field, NonNullable<Value>> {
  return { field, required: false, cell: cell as Cell<NonNullable<Value>>, blank };
}

/** An instant as it is written: wall time, with its offset from UTC where one is given. It becomes an instant when the property is known. */
export interface WrittenInstant {
  /** The wall time as if it were UTC. [ms since 1970] */
  readonly wallMs: number;
  /** [min] */
  readonly offsetMinutes: number | null;
  /** Whether only a date stands there: the first instant of that day. */
  readonly wholeDay: boolean;
}

/** An instant. [ms since 1970-01-01T00:00Z] */
export type EpochMs = number;

/** A written instant becomes an instant once the place is known; every other value stays. */
type Placed<Value> = Value extends WrittenInstant ? EpochMs : Value;

/** The fields of a row, from its columns. */
export type RowOf<C extends Columns> = {
  readonly [Name in keyof C as C[Name]['field']]: C[Name] extends Column<string, infer Value> ? Placed<Value> : never;
};

/** Reading the same cell gives the same number; only the last binary digits may differ from one version to the next. */
const SAME = 1e-13;

/** Whether two canonical values are the same, numbers but for their last binary digits. */
export function sameValue(a: unknown, b: unknown): boolean {
  if (typeof a === 'number' && typeof b === 'number') return Math.abs(a - b) <= SAME * Math.max(Math.abs(a), Math.abs(b));
  if (Array.isArray(a) && Array.isArray(b)) return a.length === b.length && a.every((value, at) => sameValue(value, b[at]));
  if (isRecord(a) && isRecord(b)) {
    const keys = new Set([...Object.keys(a), ...Object.keys(b)]);
    return [...keys].every((key) => sameValue(a[key], b[key]));
  }
  return a === b;
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
