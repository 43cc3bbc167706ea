import { patternClasses } from '@rillbook/irrigation/planning/days/pattern-classes.js';
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
