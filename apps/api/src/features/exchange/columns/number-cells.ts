import { type Cell, Fault } from './column.js';
import { asWritten, type ColumnUnit } from './column-units.js';

/** Plausible values of a column, in the unit in which it is written. */
export interface Range {
  readonly min: number;
  readonly max: number;
  /** Whether `min` itself is already out of range. */
  readonly above?: boolean;
  /** Whether `max` itself is already out of range. */
  readonly below?: boolean;
}

const NUMBER = /^[-+]?(?:\d+\.?\d*|\.\d+)$/;
const SCIENTIFIC = /^[-+]?(?:\d+\.?\d*|\.\d+)e[-+]?\d+$/i;
const SPACES = "[ \\u00a0\\u2007\\u2009\\u202f'’]";
const GROUPED = new RegExp(
  `^[-+]?\\d{1,3}(?:(?:,\\d{3})+(?:\\.\\d*)?|(?:\\.\\d{3}){2,}(?:,\\d*)?|(?:\\.\\d{3})+,\\d*|(?:${SPACES}\\d{3})+(?:[.,]\\d*)?)$`,
);
const COMMA = /^[-+]?\d*,\d+$/;

/** Reads a number as the contract has it: a dot for decimals, no separators of thousands, written out in full. */
export function readNumber(text: string, expected: string): number | Fault {
  if (!NUMBER.test(text)) return notANumber(text, expected);
  const value = Number(text);
  if (Object.is(value, -0)) return new Fault('NEGATIVE_ZERO', expected);
  return Number.isFinite(value) ? value : new Fault('OUT_OF_RANGE', expected);
}

function notANumber(text: string, expected: string): Fault {
  if (GROUPED.test(text)) return new Fault('THOUSANDS_SEPARATOR', expected);
  if (COMMA.test(text)) return new Fault('DECIMAL_COMMA', expected);
  if (SCIENTIFIC.test(text)) return new Fault('NUMBER_NOT_IN_FULL', expected);
  return new Fault('NOT_A_NUMBER', expected);
}

/** A range in signs that need no translation. */
export function rangeText(range: Range): string {
  return `${range.above ? '>' : '≥'} ${range.min}, ${range.below ? '<' : '≤'} ${range.max}`;
}

function within(value: number, range: Range): boolean {
  const low = range.above ? value > range.min : value >= range.min;
  return low && (range.below ? value < range.max : value <= range.max);
}

/** A number in a unit, kept in SI. */
export function number(unit: ColumnUnit, range: Range): Cell<number> {
  const expected = rangeText(range);
  return {
    read(text) {
      const value = readNumber(text, expected);
      if (value instanceof Fault) return value;
      return within(value, range) ? unit.toKept(value) : new Fault('OUT_OF_RANGE', expected);
    },
    write: (kept) => written(kept, unit),
  };
}

/** A whole number. */
export function whole(range: Range): Cell<number> {
  const any = number(asWritten, range);
  const expected = rangeText(range);
  return {
    read(text) {
      const value = any.read(text);
      return value instanceof Fault || Number.isInteger(value) ? value : new Fault('NOT_WHOLE', expected);
    },
    write: plainDigits,
  };
}

/** Twelve numbers, January to December, separated by spaces. */
export function twelve(unit: ColumnUnit, range: Range): Cell<readonly number[]> {
  const each = number(unit, range);
  const expected = rangeText(range);
  return {
    read(text) {
      const words = text.split(/\s+/);
      const values: number[] = [];
      for (const word of words) {
        const value = each.read(word);
        if (value instanceof Fault) return new Fault(value.code, value.expected, word);
        values.push(value);
      }
      return values.length === 12 ? values : new Fault('NOT_TWELVE_NUMBERS', expected);
    },
    write: (values) => values.map((value) => written(value, unit)).join(' '),
  };
}

/** Twelve digits survive any conversion there and back; a number that was not converted keeps all of its own. */
function written(kept: number, unit: ColumnUnit): string {
  return plainDigits(unit.plain ? kept : Number(unit.toWritten(kept).toPrecision(12)));
}

/** A number in digits alone, never in scientific form and never as a negative zero. */
export function plainDigits(value: number): string {
  if (value === 0) return '0';
  const text = String(value);
  const match = /^(-?)(\d)(?:\.(\d+))?e([-+]\d+)$/.exec(text);
  if (!match) return text;
  const [, sign = '', first = '', rest = '', power = '0'] = match;
  const digits = first + rest;
  const point = 1 + Number(power);
  if (point <= 0) return `${sign}0.${'0'.repeat(-point)}${digits}`;
  return point >= digits.length
    ? `${sign}${digits}${'0'.repeat(point - digits.length)}`
    : `${sign}${digits.slice(0, point)}.${digits.slice(point)}`;
}
