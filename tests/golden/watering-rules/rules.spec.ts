import { dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import { judgeRules } from '@rillbook/irrigation/rules/judge-rules.js';
import type { RuledPlace, WateringRule } from '@rillbook/irrigation/rules/watering-rule.js';
import type { Weekday } from '@rillbook/irrigation/settings/settings-fact.js';
import { expect, it } from 'vitest';
import { aRule, place } from '../../libs/irrigation/rules/a-rule.js';
import { left, program, replayOf, stationRun } from '../../libs/irrigation/settings/a-replay.js';
import { expectGolden, givenRow, type GoldenCheck } from '../golden-check.js';
import { checks } from './values.js';

const HOURS_OF_A_DAY = 24;
const WEEK: readonly Weekday[] = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
const clock = (hour: number) => `${String(hour).padStart(2, '0')}:00`;

/** Whether settings that run one station for ten minutes on some days at an hour are blamed. */
const isBlamed = (rules: readonly WateringRule[], at: RuledPlace, days: readonly Weekday[], hour: number) =>
  judgeRules(replayOf([left([program({ days: { kind: 'weekdays', weekdays: days }, starts: [60 * hour] })])], { days: 7 }), rules, at)
    .length > 0;

/** Days of the week on which a rule lets water run, in the order in which they are printed. */
const daysLeft = (rules: readonly WateringRule[], at: RuledPlace, hour: number, order: readonly Weekday[]) =>
  order.filter((day) => !isBlamed(rules, at, [day], hour)).join('+');

/** Spans of hours in which a rule lets water run on a day. */
function hoursLeft(rules: readonly WateringRule[], at: RuledPlace, day: Weekday): string {
  const free = Array.from({ length: HOURS_OF_A_DAY }, (_, hour) => !isBlamed(rules, at, [day], hour));
  const spans = free.flatMap((isFree, hour) =>
    isFree && !free[hour - 1]
      ? [`${clock(hour)}-${clock(free.indexOf(false, hour) < 0 ? HOURS_OF_A_DAY : free.indexOf(false, hour))}`]
      : [],
  );
  return spans.join(' and ');
}

const byParity = (days: Readonly<Record<'odd' | 'even', readonly Weekday[]>>, from: number, until: number): readonly WateringRule[] =>
  (['odd', 'even'] as const).map((parity) =>
    aRule({
      name: parity,
      addressParity: parity,
      allowedDays: { kind: 'weekdays', weekdays: days[parity] },
      blockedFrom: 60 * from,
      blockedUntil: 60 * until,
    }),
  );
const address = (addressNumber: number) => place({ addressNumber });

it('dr-001: nothing within 48 hours of measurable rain', () => {
  const check: GoldenCheck = checks['dr-001'];
  const rule = aRule({ hoursAfterRain: 48 });
  const startsAt = dayNumberOfDate('2026-06-03') * 1440 + 300;
  const allowed = givenRow(check, 'hours_since_measurable_rain').map((hours) => {
    const ended = startsAt - 60 * hours;
    const replay = replayOf([left([program()])], { firstDay: dayNumberOfDate('2026-06-03'), days: 1 });
    return judgeRules(replay, [rule], place({ rain: [{ mm: 1, endedFrom: ended, endedUntil: ended }] })).length === 0 ? 'yes' : 'no';
  });
  expectGolden(check, { potable_irrigation_allowed: allowed.join(' | ') });
});

it('dr-003: three days a week', () => {
  const rule = aRule({ daysPerWeek: 3 });
  const most = WEEK.map((_, at) => WEEK.slice(0, at + 1)).filter((days) => !isBlamed([rule], place(), days, 5)).length;
  expectGolden(checks['dr-003'], { max_days_per_week: most });
});

it('dr-004: days by the address, and hours', () => {
  const rules = byParity({ odd: ['Wed', 'Sat'], even: ['Thu', 'Sun'] }, 10, 19);
  // Commercial addresses have a rule of their own, which a company gives to the suppliers of such properties.
  const commercial = [aRule({ allowedDays: { kind: 'weekdays', weekdays: ['Tue', 'Fri'] }, blockedFrom: 600, blockedUntil: 1140 })];
  const days = [daysLeft(rules, address(7), 5, WEEK), daysLeft(rules, address(12), 5, WEEK), daysLeft(commercial, address(7), 5, WEEK)];
  expectGolden(checks['dr-004'], { days: days.join(' | '), hours: hoursLeft(rules, address(7), 'Wed') });
});

it('dr-006: hours and minutes', () => {
  const rule = aRule({ blockedFrom: 480, blockedUntil: 1020, maxMinutes: 15 });
  const blocked = Array.from({ length: HOURS_OF_A_DAY }, (_, hour) => hour).filter((hour) => isBlamed([rule], place(), ['Mon'], hour));
  const most = Array.from({ length: 60 }, (_, at) => at + 1).filter(
    (minutes) => judgeRules(replayOf([left([program({ stations: [stationRun(1, minutes)] })])]), [rule], place()).length === 0,
  ).length;
  expectGolden(checks['dr-006'], {
    prohibited_hours: `${clock(blocked[0] ?? 0)}-${clock((blocked.at(-1) ?? 0) + 1)}`,
    max_minutes_per_station: most,
  });
  expect(blocked).toHaveLength(9);
});

it('dr-007: days by the address, and hours', () => {
  const rules = byParity({ odd: ['Wed', 'Sat'], even: ['Thu', 'Sun'] }, 10, 20);
  const days = [
    daysLeft(rules, address(12), 5, ['Sun', ...WEEK.slice(0, 6)]),
    daysLeft(rules, address(7), 5, ['Sat', ...WEEK.slice(0, 5), 'Sun']),
  ];
  expectGolden(checks['dr-007'], { days: days.join(' | '), hours: hoursLeft(rules, address(12), 'Sun') });
});
