import { date, daysAfter } from '../../columns/time-cells.js';
import type { StationLine } from '../station/station-line.js';

const two = (text: string): string => text.padStart(2, '0');
const WHOLE = /^\d{1,2}$/;
const US_DATE = /^(\d{1,2})\/(\d{1,2})\/(\d{4})$/;
const COMPACT = /^(\d{4})(\d{2})(\d{2})$/;
const WITH_MIDNIGHT = /^(\d{4}-\d{2}-\d{2})[T ]00:00(?::00(?:\.0+)?)?Z?$/;

/** A date written in one column: yyyy-mm-dd (also with midnight behind it), yyyymmdd or m/d/yyyy. Null with a fault where it is none. */
export function dayIn(line: StationLine, column: string): string | null {
  const text = line.text(column);
  const us = US_DATE.exec(text);
  const compact = COMPACT.exec(text);
  if (us) return checked(line, column, text, `${us[3]}-${two(us[1] ?? '')}-${two(us[2] ?? '')}`);
  if (compact) return checked(line, column, text, compact.slice(1).join('-'));
  return checked(line, column, text, WITH_MIDNIGHT.exec(text)?.[1] ?? text);
}

/** A date written in three columns. */
export function dayOfThree(line: StationLine, year: string, month: string, day: string): string | null {
  const [y, m, d] = [line.text(year), line.text(month), line.text(day)];
  const text = WHOLE.test(m) && WHOLE.test(d) ? `${y}-${two(m)}-${two(d)}` : `${y}-${m}-${d}`;
  return checked(line, day, text, text);
}

function checked(line: StationLine, column: string, found: string, text: string): string | null {
  const read = date.read(text);
  if (typeof read === 'string') return read;
  line.refuse(read.code, column, { found, expected: read.expected });
  return null;
}

/** An hour of a local-standard-time day. */
interface HourOfDay {
  readonly day: string;
  /** 0 for the hour that begins at midnight, 23 for the one that ends there. */
  readonly hour: number;
}

/** The hour that ends at a clock hour of a date: hour 0 ends the day before, hour 24 the date itself. */
export function hourEnding(day: string, clockHour: number): HourOfDay {
  return clockHour === 0 ? { day: daysAfter(day, -1), hour: 23 } : { day, hour: clockHour - 1 };
}
