import { crewPace } from '@rillbook/routing/day/crew-pace.js';
import { openWindows, type VisitHours } from '@rillbook/routing/day/open-windows.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { HOUR } from './a-plan.js';

const hours = (kind: VisitHours['kind'], weekdays: readonly number[], from: number, until: number): VisitHours => ({
  kind,
  weekdays,
  fromMinute: 60 * from,
  untilMinute: 60 * until,
});
const inHours = (stated: readonly VisitHours[], weekday: number) =>
  openWindows(stated, weekday).map(({ opensS, closesS }) => [opensS / HOUR, closesS / HOUR]);

describe('when a property may be visited', () => {
  it('is its gate hours without the school hours', () => {
    const school = [hours('open', [1, 2, 3, 4, 5], 6, 18), hours('open', [6], 8, 12), hours('closed', [1, 2, 3, 4, 5], 8, 15)];
    expect(inHours(school, 1)).toEqual([
      [6, 8],
      [15, 18],
    ]);
    expect(inHours(school, 6)).toEqual([[8, 12]]);
    expect(inHours(school, 7)).toEqual([]);
    expect(inHours([hours('closed', [3], 0, 24)], 3)).toEqual([]);
    expect(inHours([], 3)).toEqual([[0, 24]]);
    expect(inHours([hours('open', [1], 8, 11), hours('open', [1], 10, 12)], 1)).toEqual([[8, 12]]);
  });

  it('is exactly the open minutes that are not closed', () => {
    const some = fc.record({
      kind: fc.constantFrom('open' as const, 'closed' as const),
      weekdays: fc.subarray([1, 2], { minLength: 1 }),
      fromMinute: fc.integer({ min: 0, max: 700 }),
      untilMinute: fc.integer({ min: 701, max: 1440 }),
    });
    fc.assert(
      fc.property(fc.array(some, { maxLength: 5 }), fc.integer({ min: 0, max: 1439 }), (stated, minute) => {
        const on = (kind: string) =>
          stated.some((one) => one.kind === kind && one.weekdays.includes(1) && one.fromMinute <= minute && minute < one.untilMinute);
        const open = (stated.every(({ kind }) => kind === 'closed') || on('open')) && !on('closed');
        expect(openWindows(stated, 1).some(({ opensS, closesS }) => opensS <= minute * 60 && minute * 60 < closesS)).toBe(open);
      }),
    );
  });
});

describe('the pace of a crew', () => {
  const visits = (...took: number[]) => took.map((tookMinutes) => ({ estimateMinutes: 30, tookMinutes }));

  it('is the median of what visits took over their estimates', () => {
    expect(crewPace(visits(30, 33, 36, 36, 36, 39, 45, 900))).toEqual({ factor: 1.2, visits: 8 });
    expect(crewPace(visits(30, 30, 30, 30, 36, 36, 36, 36)).factor).toBeCloseTo(1.1, 12);
  });

  it('is 1 where too few visits tell, and bounded where they tell nonsense', () => {
    expect(crewPace([...visits(90, 90, 90), { estimateMinutes: 0, tookMinutes: 5 }])).toEqual({ factor: 1, visits: 0 });
    expect(crewPace(visits(...Array.from({ length: 9 }, () => 600))).factor).toBe(2);
    expect(crewPace(visits(...Array.from({ length: 9 }, () => 1))).factor).toBe(0.5);
  });
});
