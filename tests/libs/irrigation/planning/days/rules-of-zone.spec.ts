import { patternOf, weekdayPattern } from '@rillbook/irrigation/planning/days/day-pattern.js';
import { patternIsAllowed, rulesInMonth, rulesOfZone } from '@rillbook/irrigation/planning/days/rules-of-zone.js';
import type { WateringRule } from '@rillbook/irrigation/rules/watering-rule.js';
import type { ProgramDays, Weekday } from '@rillbook/irrigation/settings/settings-fact.js';
import { describe, expect, it } from 'vitest';
import { noRule } from '../a-controller.js';

const ruled = (...rules: readonly Partial<WateringRule>[]) =>
  rulesOfZone(
    rules.map((rule) => ({ ...noRule, ...rule })),
    { station: 1, plants: 'turf', method: 'spray' },
  );
const on = (...weekdays: readonly Weekday[]) => ({ allowedDays: { kind: 'weekdays' as const, weekdays } });
const [MON, WED, ALL] = [1, 4, 127];

describe('days of a program', () => {
  it.each<[ProgramDays, object]>([
    [{ kind: 'daily' }, { gaps: [1, 1, 1, 1, 1, 1, 1], perWeek: 7, mask: ALL, mostInWeek: 7 }],
    [
      { kind: 'weekdays', weekdays: ['Sat', 'Mon', 'Wed'] },
      { gaps: [2, 3, 2], perWeek: 3, mask: 1 + 4 + 32, mostInWeek: 3 },
    ],
    [
      { kind: 'every', everyDays: 3, from: '2026-07-01' },
      { gaps: [3], perWeek: 7 / 3, mask: ALL, mostInWeek: 3 },
    ],
    [
      { kind: 'every', everyDays: 0, from: '2026-07-01' },
      { gaps: [1], perWeek: 7, mostInWeek: 7 },
    ],
  ])('%j', (days, pattern) => {
    expect(patternOf(days, '2026-07-01')).toMatchObject(pattern);
  });

  it('odd days of July and after are two apart, but one from the 31st to the 1st', () => {
    const { gaps, mostInWeek, mask } = patternOf({ kind: 'odd' }, '2026-07-01');
    // 84 days from 1 July: to 22 September; 16 odd ones in July and in August, 11 in September.
    expect(gaps).toHaveLength(16 + 16 + 11);
    expect(gaps.slice(0, 17)).toEqual([...new Array<number>(15).fill(2), 1, 2]);
    expect(gaps.reduce((sum, gap) => sum + gap, 0)).toBe(84);
    expect([mostInWeek, mask]).toEqual([4, ALL]);
  });
});

describe('what rules leave a zone', () => {
  it('is all where there is none, and the strictest of each where there are several', () => {
    expect(ruled()).toEqual({ mask: ALL, parity: null, daysPerWeek: 7, maxMinutes: Infinity, forbidden: false });
    expect(
      ruled({ daysPerWeek: 3, maxMinutes: 20 }, { daysPerWeek: 2, ...on('Mon', 'Wed') }, { maxMinutes: 30, ...on('Mon', 'Fri') }),
    ).toEqual({
      mask: MON,
      parity: null,
      daysPerWeek: 2,
      maxMinutes: 20,
      forbidden: false,
    });
  });

  it.each<[string, readonly Partial<WateringRule>[]]>([
    ['no day at all', [{ allowedDays: { kind: 'none' } }]],
    ['no day a week', [{ daysPerWeek: 0 }]],
    ['weekdays that have none in common', [on('Mon'), on('Tue')]],
    ['odd and even days', [{ allowedDays: { kind: 'odd' } }, { allowedDays: { kind: 'even' } }]],
    ['no day, whatever comes after', [{ allowedDays: { kind: 'none' } }, on('Mon'), { allowedDays: { kind: 'odd' } }, { daysPerWeek: 3 }]],
  ])('is nothing where it is %s', (_what, rules) => {
    expect(ruled(...rules).forbidden).toBe(true);
    expect(patternIsAllowed(ruled(...rules), weekdayPattern(MON), ALL)).toBe(false);
  });

  it('is of the plants and methods that a rule is about', () => {
    expect(ruled({ daysPerWeek: 2, plants: ['shrubs'] }, { daysPerWeek: 3, exemptMethods: ['spray'] }).daysPerWeek).toBe(7);
    expect(ruled({ daysPerWeek: 2, plants: ['turf'] }, { daysPerWeek: 3, exemptMethods: ['drip'] }).daysPerWeek).toBe(2);
  });

  it.each<[boolean, string, readonly Partial<WateringRule>[], ProgramDays, number]>([
    [true, 'any days without a rule', [], { kind: 'every', everyDays: 2, from: '2026-07-01' }, 0],
    [true, 'as many days as a week may have', [{ daysPerWeek: 2 }], { kind: 'weekdays', weekdays: ['Mon', 'Wed'] }, ALL],
    [false, 'more', [{ daysPerWeek: 1 }], { kind: 'weekdays', weekdays: ['Mon', 'Wed'] }, ALL],
    [true, 'its weekdays', [on('Mon', 'Wed')], { kind: 'weekdays', weekdays: ['Wed'] }, ALL],
    [false, 'another weekday', [on('Mon', 'Wed')], { kind: 'weekdays', weekdays: ['Wed', 'Thu'] }, ALL],
    [false, 'days that the other zones do not keep', [on('Mon', 'Wed')], { kind: 'weekdays', weekdays: ['Wed'] }, MON],
    [false, 'an interval, which drifts through the week', [on('Mon', 'Wed')], { kind: 'every', everyDays: 7, from: '2026-07-01' }, ALL],
    [true, 'odd days', [{ allowedDays: { kind: 'odd' } }], { kind: 'odd' }, ALL],
    [true, 'odd days, which two rules ask for', [{ allowedDays: { kind: 'odd' } }, { allowedDays: { kind: 'odd' } }], { kind: 'odd' }, ALL],
    [false, 'even days', [{ allowedDays: { kind: 'odd' } }], { kind: 'even' }, ALL],
    [
      false,
      'odd days, four in some weeks, of which two are allowed',
      [{ allowedDays: { kind: 'odd' }, daysPerWeek: 2 }],
      { kind: 'odd' },
      ALL,
    ],
    [false, 'odd days, of which Mondays are allowed', [{ allowedDays: { kind: 'odd' } }, on('Mon')], { kind: 'odd' }, ALL],
    [false, 'daily', [on('Mon')], { kind: 'daily' }, ALL],
  ])('%s: %s', (allowed, _what, rules, days, kept) => {
    expect(patternIsAllowed(ruled(...rules), patternOf(days, '2026-07-01'), kept)).toBe(allowed);
  });
});

it('rules of a month are those in force on any day of it, at the address and for its water', () => {
  const named = (name: string, more: Partial<WateringRule>): WateringRule => ({ ...noRule, name, daysPerWeek: 2, ...more });
  const rules = [
    named('always', {}),
    named('from its last day', { effectiveFrom: '2026-07-31' }),
    named('to its first day', { effectiveUntil: '2026-07-01' }),
    named('later', { effectiveFrom: '2026-08-01' }),
    named('before', { effectiveUntil: '2026-06-30' }),
    named('odd addresses', { addressParity: 'odd' }),
    named('recycled', { water: ['recycled'] }),
  ];
  const names = rulesInMonth(rules, '2026-07', { addressNumber: 12, water: 'potable' }).map(({ name }) => name);
  expect(names).toEqual(['always', 'from its last day', 'to its first day']);
  expect(weekdayPattern(WED)).toMatchObject({ days: { kind: 'weekdays', weekdays: ['Wed'] }, gaps: [7] });
});
