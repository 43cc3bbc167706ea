import type { EpochMs, WrittenInstant } from '../columns/column.js';
import { wallText } from '../columns/time-cells.js';
import type { DraftRow } from './draft-row.js';
import { instantsOf, startOfDay } from './zone-clock.js';

const MS_PER_MINUTE = 60_000;

/** Chooses between the two instants at which a wall time occurs. */
export type Choose = (first: EpochMs, second: EpochMs) => EpochMs;

/** The contract's rule where no rows before say otherwise. */
export const theFirst: Choose = (first) => first;

/** An instant from its written form, or null where the clocks of the zone never show that time. */
export function placed(written: WrittenInstant, zone: string, choose: Choose): EpochMs | null {
  if (written.offsetMinutes !== null) return written.wallMs - written.offsetMinutes * MS_PER_MINUTE;
  if (written.wholeDay) return startOfDay(zone, written.wallMs);
  const [first, second] = instantsOf(zone, written.wallMs);
  if (first === undefined) return null;
  return second === undefined ? first : choose(first, second);
}

/** Turns a row's written instant into an instant; a time that does not exist is a problem. */
export function placeInstant(row: DraftRow, field: string, column: string, zone: string, choose: Choose = theFirst): EpochMs | null {
  const written = row.values[field];
  if (!isWritten(written)) return null;
  const instant = placed(written, zone, choose);
  if (instant === null) {
    row.refuse('TIME_DOES_NOT_EXIST', { column, found: wallText(written.wallMs), expected: zone });
    delete row.values[field];
  } else {
    row.values[field] = instant;
  }
  return instant;
}

function isWritten(value: unknown): value is WrittenInstant {
  return typeof value === 'object' && value !== null && 'wallMs' in value;
}

/**
 * The wall times of one meter's rows, in the order of the file: a time that occurs twice is its second occurrence only
 * where a row before has already reached the first and not yet the second.
 */
export class ReadingClock {
  private readonly last = new Map<string, EpochMs>();

  chooseFor(meter: string): Choose {
    const last = this.last.get(meter);
    return (first, second) => (last !== undefined && last >= first && last < second ? second : first);
  }

  advance(meter: string, instant: EpochMs): void {
    this.last.set(meter, instant);
  }
}

/** The same for intervals: the next one starts where the last one ended, and each ends after it starts. */
export class IntervalClock {
  private readonly lastEnd = new Map<string, EpochMs>();

  chooseStart(meter: string): Choose {
    const last = this.lastEnd.get(meter);
    return (first, second) => (last !== undefined && last > first && last <= second ? second : first);
  }

  chooseEnd(start: EpochMs | null): Choose {
    return (first, second) => (start !== null && first <= start && start < second ? second : first);
  }

  advance(meter: string, end: EpochMs): void {
    this.lastEnd.set(meter, end);
  }
}
