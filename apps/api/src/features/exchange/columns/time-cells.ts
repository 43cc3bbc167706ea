import { type Cell, Fault, type WrittenInstant } from './column.js';

const MS_PER_MINUTE = 60_000;
const MS_PER_DAY = 86_400_000;
const FIRST_YEAR = 1900;
const LAST_YEAR = 2100;
const YEARS = `≥ ${FIRST_YEAR}-01-01, ≤ ${LAST_YEAR}-12-31`;
const DATE = /^(\d{4})-(\d{2})-(\d{2})$/;
const INSTANT = /^(\d{4}-\d{2}-\d{2})(?:(?:[Tt]|[ ]+)(\d{1,2}):(\d{2})(?::(\d{2})(?:[.,](\d{1,9}))?)?[ ]?([Zz]|[+-]\d{2}(?::?\d{2})?)?)?$/;
const LOCAL_TIME = /^(\d{1,2}):(\d{2})(?::00)?$/;

/** The first instant of a calendar day as if it were UTC, or why it is none. [ms] */
function dayMs(text: string): number | Fault {
  const match = DATE.exec(text);
  if (!match) return new Fault('NOT_A_DATE', 'yyyy-mm-dd');
  const year = Number(match[1]);
  const ms = Date.UTC(year, Number(match[2]) - 1, Number(match[3]));
  // Date.UTC takes years below 100 for 19xx and rolls over days that do not exist.
  if (year < 100 || new Date(ms).toISOString().slice(0, 10) !== text)
    return year < 100 ? new Fault('OUT_OF_RANGE', YEARS) : new Fault('NOT_A_DATE', 'yyyy-mm-dd');
  return year >= FIRST_YEAR && year <= LAST_YEAR ? ms : new Fault('OUT_OF_RANGE', YEARS);
}

/** A calendar date, kept as yyyy-mm-dd. */
export const date: Cell<string> = {
  read(text) {
    const ms = dayMs(text);
    return ms instanceof Fault ? ms : text;
  },
  write: (value) => value,
};

/** The day so many days after a date. */
export function daysAfter(day: string, days: number): string {
  return new Date(Date.parse(`${day}T00:00:00Z`) + days * MS_PER_DAY).toISOString().slice(0, 10);
}

/** A date and time in ISO 8601, in the property's time or with an offset from UTC; a date alone is the beginning of that day. */
export const instant: Cell<WrittenInstant> = {
  read(text) {
    const fault = new Fault('NOT_AN_INSTANT', 'yyyy-mm-ddThh:mm');
    const match = INSTANT.exec(text);
    if (!match?.[1]) return fault;
    const day = dayMs(match[1]);
    if (day instanceof Fault) return day.code === 'NOT_A_DATE' ? fault : day;
    if (match[2] === undefined) return { wallMs: day, offsetMinutes: null, wholeDay: true };
    const time = timeMs(match);
    const offsetMinutes = match[6] === undefined ? null : offsetOf(match[6]);
    if (time === null || Number.isNaN(offsetMinutes)) return fault;
    return { wallMs: day + time, offsetMinutes, wholeDay: false };
  },
  write: (value) => wallText(value.wallMs) + (value.offsetMinutes === null ? '' : offsetText(value.offsetMinutes)),
};

/** The time of day of a match; 24:00 is the end of the day. [ms] */
function timeMs(match: RegExpExecArray): number | null {
  const [hour, minute, second] = [Number(match[2]), Number(match[3]), Number(match[4] ?? 0)];
  const millisecond = Math.floor(Number(`0.${match[5] ?? 0}`) * 1000);
  const endOfDay = hour === 24 && minute === 0 && second === 0 && millisecond === 0;
  if ((hour > 23 && !endOfDay) || minute > 59 || second > 59) return null;
  return ((hour * 60 + minute) * 60 + second) * 1000 + millisecond;
}

function offsetOf(text: string): number {
  if (/^z$/i.test(text)) return 0;
  const [hours, minutes] = [Number(text.slice(1, 3)), Number(text.slice(3).replace(':', '') || 0)];
  return hours > 15 || minutes > 59 ? Number.NaN : (text.startsWith('-') ? -1 : 1) * (hours * 60 + minutes);
}

/** A wall time without offset, to the minute where nothing finer is needed. */
export function wallText(wallMs: number): string {
  const iso = new Date(wallMs).toISOString();
  if (wallMs % MS_PER_MINUTE === 0) return iso.slice(0, 16);
  return wallMs % 1000 === 0 ? iso.slice(0, 19) : iso.slice(0, 23);
}

/** An offset from UTC as ISO 8601 writes it. */
export function offsetText(minutes: number): string {
  const size = Math.abs(minutes);
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${minutes < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(Math.floor(size) % 60)}`;
}

function minutesOf(text: string): number | null {
  const match = LOCAL_TIME.exec(text);
  if (!match || Number(match[1]) > 23 || Number(match[2]) > 59) return null;
  return Number(match[1]) * 60 + Number(match[2]);
}

function clock(minutes: number): string {
  return `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;
}

/** A time of day, kept as hh:mm. */
export const localTime: Cell<string> = {
  read(text) {
    const minutes = minutesOf(text);
    return minutes === null ? new Fault('NOT_A_LOCAL_TIME', 'hh:mm') : clock(minutes);
  },
  write: (value) => value,
};

/** Start times separated by spaces, kept in minutes after midnight; `none` is a program that never starts. */
export const starts: Cell<readonly number[]> = {
  read(text) {
    const fault = new Fault('NOT_STARTS', '05:00 22:30');
    if (/^none$/i.test(text)) return [];
    const minutes = text.split(/\s+/).map(minutesOf);
    if (minutes.includes(null) || new Set(minutes).size !== minutes.length || minutes.length > 48) return fault;
    return minutes as number[];
  },
  write: (minutes) => (minutes.length === 0 ? 'none' : minutes.map(clock).join(' ')),
};
