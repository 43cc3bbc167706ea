import { patternOf, weekdayPattern } from '@rillbook/irrigation/planning/days/day-pattern.js';
import { classOfPattern, patternClasses } from '@rillbook/irrigation/planning/days/pattern-classes.js';
import { rulesOfZone } from '@rillbook/irrigation/planning/days/rules-of-zone.js';
import { describe, expect, it } from 'vitest';
import { noRule } from '../a-controller.js';

const lawn = { station: 1, plants: 'turf', method: 'spray' } as const;
const free = rulesOfZone([], lawn);
const odd = rulesOfZone([{ ...noRule, allowedDays: { kind: 'odd' } }], lawn);
const EVERY_DAY = 127;

const classesOf = (...zones: readonly (typeof free)[]) => patternClasses(zones, EVERY_DAY, { from: '2026-07-01', everyDays: [3] });
const kindsOf = (...zones: readonly (typeof free)[]) => [
  ...new Set(classesOf(...zones).flatMap(({ patterns }) => patterns.map(({ days }) => days.kind))),
];

describe('the days that programs of a controller may be given', () => {
  it('are odd or even days only where a rule asks for them', () => {
    expect(kindsOf(free)).not.toContain('odd');
    expect(kindsOf(free)).not.toContain('even');
    // Of two zones one is bound to odd days: those are tried for both, even ones for neither.
    expect(kindsOf(free, odd)).toContain('odd');
    expect(kindsOf(free, odd)).not.toContain('even');
    expect(classesOf(free, odd).find(({ patterns }) => patterns[0]?.days.kind === 'odd')?.allowed).toEqual([true, true]);
  });

  it('leave out what is allowed to no zone', () => {
    expect(kindsOf(odd)).toEqual(['odd']);
  });

  it('are, of as many weekdays a week, the most even', () => {
    const twice = classesOf(free).filter(({ perWeek }) => perWeek === 2);
    expect(twice.map(({ gaps }) => [...gaps].sort((a, b) => a - b))).toEqual([[3, 4]]);
    // Seven pairs of weekdays are three and four days apart.
    expect(twice[0]?.patterns).toHaveLength(7);
  });
});

describe('the days that a program has now', () => {
  const [MON_TUE, MON_THU] = [3, 9];
  const never = rulesOfZone([{ ...noRule, allowedDays: { kind: 'none' } }], lawn);

  it('are a class of their own, however uneven, with the zones that are allowed them', () => {
    const now = classOfPattern([free, never], EVERY_DAY, weekdayPattern(MON_TUE));
    expect(now).toMatchObject({ patterns: [weekdayPattern(MON_TUE)], gaps: [1, 6], perWeek: 2, allowed: [true, false] });
    expect(now?.key).toMatch(/^as set /);
    expect(now?.key).not.toBe(classOfPattern([free], EVERY_DAY, weekdayPattern(MON_THU))?.key);
  });

  it('are none where no zone is allowed them, or there are no days', () => {
    expect(classOfPattern([never, never], EVERY_DAY, weekdayPattern(MON_TUE))).toBeNull();
    expect(classOfPattern([free], EVERY_DAY, patternOf({ kind: 'weekdays', weekdays: [] }, '2026-07-01'))).toBeNull();
  });
});
