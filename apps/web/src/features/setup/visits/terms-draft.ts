import { typedNumber } from '../../../i18n/numbers.js';
import { minuteOfClock, typedClock } from '../../../page/values/minute-of-day.js';
import { listOf } from '../things/fields/read-field.js';

/** Hours of a property as they are typed. */
export interface HoursDraft {
  readonly key: number;
  readonly kind: 'open' | 'closed';
  readonly weekdays: readonly number[];
  readonly from: string;
  readonly until: string;
}

/** Visit terms as they are typed. */
export interface TermsDraft {
  readonly everyDays: string;
  readonly visitMinutes: string;
  readonly skills: string;
  readonly hours: readonly HoursDraft[];
}

/** Visit terms as they are kept. Weekdays are Monday 1 to Sunday 7, times minutes since midnight. */
export interface Terms {
  readonly everyDays?: number | null;
  readonly visitMinutes?: number | null;
  readonly skills: readonly string[];
  readonly hours: readonly {
    readonly kind: string;
    readonly weekdays: readonly number[];
    readonly fromMinute: number;
    readonly untilMinute: number;
  }[];
}

/** What of a draft is wrong: a field by its place in the form, and why. */
export interface TermsWrong {
  readonly field: string;
  readonly why: 'noDays' | 'noMinutes' | 'noWeekday' | 'noTime' | 'endsBefore';
  readonly found: string;
}

const WEEKDAYS = [1, 2, 3, 4, 5];
const MOST_DAYS = 366;
const MOST_MINUTES = 1440;

const typed = (value: number | null | undefined): string => (value === null || value === undefined ? '' : String(value));

export const draftOfTerms = (terms: Terms | null): TermsDraft => ({
  everyDays: typed(terms?.everyDays),
  visitMinutes: typed(terms?.visitMinutes),
  skills: terms?.skills.join(', ') ?? '',
  hours: (terms?.hours ?? []).map(({ kind, weekdays, fromMinute, untilMinute }, key) => ({
    key,
    kind: kind === 'closed' ? 'closed' : 'open',
    weekdays,
    from: typedClock(fromMinute),
    until: typedClock(untilMinute),
  })),
});

/** Hours that are added: school hours are the usual reason to stay away, a gate the usual reason to come within hours. */
export const newHours = (kind: HoursDraft['kind'], hours: readonly HoursDraft[]): HoursDraft => ({
  key: 1 + Math.max(-1, ...hours.map(({ key }) => key)),
  kind,
  weekdays: WEEKDAYS,
  from: kind === 'open' ? '07:00' : '08:00',
  until: kind === 'open' ? '16:00' : '15:00',
});

const isWithin = (text: string, most: number): boolean => {
  const value = typedNumber(text);
  return value !== null && Number.isInteger(value) && value > 0 && value <= most;
};

function wrongOfHours({ key, weekdays, from, until }: HoursDraft): TermsWrong[] {
  const [begins, ends] = [minuteOfClock(from), minuteOfClock(until)];
  if (weekdays.length === 0) return [{ field: `hours-${key}-days`, why: 'noWeekday', found: '' }];
  if (begins === null) return [{ field: `hours-${key}-from`, why: 'noTime', found: from }];
  if (ends === null) return [{ field: `hours-${key}-until`, why: 'noTime', found: until }];
  return ends > begins ? [] : [{ field: `hours-${key}-until`, why: 'endsBefore', found: until }];
}

/** Everything that cannot be kept of what is typed. */
export const wrongOfTerms = ({ everyDays, visitMinutes, hours }: TermsDraft): readonly TermsWrong[] => [
  ...(everyDays.trim() === '' || isWithin(everyDays, MOST_DAYS) ? [] : [{ field: 'everyDays', why: 'noDays', found: everyDays } as const]),
  ...(visitMinutes.trim() === '' || isWithin(visitMinutes, MOST_MINUTES)
    ? []
    : [{ field: 'visitMinutes', why: 'noMinutes', found: visitMinutes } as const]),
  ...hours.flatMap(wrongOfHours),
];

/** What is sent of a draft in which nothing is wrong. */
export const inputOfTerms = ({ everyDays, visitMinutes, skills, hours }: TermsDraft) => ({
  everyDays: typedNumber(everyDays),
  visitMinutes: typedNumber(visitMinutes),
  skills: [...listOf(skills)],
  hours: hours.map(({ kind, weekdays, from, until }) => ({
    kind,
    weekdays: [...weekdays],
    fromMinute: minuteOfClock(from) ?? 0,
    untilMinute: minuteOfClock(until) ?? 0,
  })),
});
