import { dayNumberOfDate } from '../../calendar/local-date.js';
import { programStartsOn } from '../../settings/replay/program-starts-on.js';
import type { ProgramDays, Weekday } from '../../settings/settings-fact.js';

const WEEKDAYS: readonly Weekday[] = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
const DAYS_PER_WEEK = 7;
/** All seven days, Monday as the lowest bit. */
export const EVERY_DAY = 127;

/**
 * The days of a program as a plan sees them: the gaps of a round that repeats, how many waterings a week that makes, the weekdays that it can
 * fall on (Monday the lowest bit), and the most of them in one week.
 */
export interface DayPattern {
  readonly days: ProgramDays;
  readonly gaps: readonly number[];
  readonly perWeek: number;
  readonly mask: number;
  readonly mostInWeek: number;
}

/**
 * The pattern of some weekdays.
 *
 * @param mask - Bits of the weekdays, Monday the lowest. [code]
 * @returns The pattern. [d]
 */
export function weekdayPattern(mask: number): DayPattern {
  const known = knownPatterns[mask] ?? patternOfMask(mask);
  knownPatterns[mask] = known;
  return known;
}

/** Patterns of weekdays by their bits: 128, each asked for thousands of times. */
const knownPatterns: DayPattern[] = [];

function patternOfMask(mask: number): DayPattern {
  const at = WEEKDAYS.map((_, day) => day).filter((day) => mask & (1 << day));
  const gaps = gapsOf(at, DAYS_PER_WEEK);
  const weekdays = at.map((day) => WEEKDAYS[day] as Weekday);
  return { days: { kind: 'weekdays', weekdays }, gaps, perWeek: at.length, mask, mostInWeek: at.length };
}

/**
 * Weekdays as bits.
 *
 * @param weekdays - The weekdays. [code]
 * @returns Monday the lowest bit. [code]
 */
export function maskOfWeekdays(weekdays: readonly Weekday[]): number {
  return WEEKDAYS.reduce((mask, day, at) => mask | (weekdays.includes(day) ? 1 << at : 0), 0);
}

/** Odd and even days are looked at over so many days from the month's first: the 31st and the 1st are both odd. [d] */
export const ROUND_OF_ALL = 84;

/**
 * The pattern of days as a program has them.
 *
 * @param days - Days of the program. [code]
 * @param from - First day of the month that is planned. [code]
 * @returns The pattern. [d]
 */
export function patternOf(days: ProgramDays, from: string): DayPattern {
  switch (days.kind) {
    case 'daily':
      return { ...weekdayPattern(EVERY_DAY), days };
    case 'weekdays':
      return weekdayPattern(maskOfWeekdays(days.weekdays));
    case 'every': {
      const gap = Math.max(1, days.everyDays);
      return { days, gaps: [gap], perWeek: DAYS_PER_WEEK / gap, mask: EVERY_DAY, mostInWeek: Math.ceil(DAYS_PER_WEEK / gap) };
    }
    default: {
      const first = dayNumberOfDate(from);
      const gaps = gapsOf(
        Array.from({ length: ROUND_OF_ALL }, (_, day) => day).filter((day) => programStartsOn(days, first + day)),
        ROUND_OF_ALL,
      );
      return { days, gaps, perWeek: (gaps.length * DAYS_PER_WEEK) / ROUND_OF_ALL, mask: EVERY_DAY, mostInWeek: 4 };
    }
  }
}

function gapsOf(at: readonly number[], round: number): readonly number[] {
  return at.map((day, index) => (at[index + 1] ?? (at[0] as number) + round) - day);
}
