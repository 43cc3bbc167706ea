import { weekdayPattern } from '@rillbook/irrigation/planning/days/day-pattern.js';
import { meetings } from '@rillbook/irrigation/planning/leaf/meetings.js';
import { describe, expect, it } from 'vitest';

const [MON, TUE, WED] = [1, 2, 4];
const among = (...masks: readonly number[]) => masks.map(weekdayPattern);
const ANY_DAY = among(1, 2, 4, 8, 16, 32, 64);
/** Bits of the programs that run on one day. */
const together = (...turns: Parameters<typeof meetings>[0]) => meetings(turns)?.map((way) => way.together) ?? null;

describe('the ways in which programs meet', () => {
  it('are one where they have days of their own, or must share one', () => {
    expect(together(ANY_DAY)).toEqual([[1]]);
    expect(together(ANY_DAY, ANY_DAY)).toEqual([[1, 2]]);
    expect(together(among(MON), among(MON))).toEqual([[3]]);
    // Mon and Tue, and Tue and Wed: what runs on Mon or Wed alone says nothing beside the day of both.
    expect(together(among(MON | TUE), among(TUE | WED))).toEqual([[3]]);
    expect(together(among(MON | TUE), among(WED))).toEqual([[1, 2]]);
  });

  it('are several where none meets less than another', () => {
    // The third shares a day with the first or with the second.
    expect(together(among(MON), among(TUE), among(MON, TUE))).toEqual([
      [2, 5],
      [1, 6],
    ]);
    expect(together(among(MON), among(TUE), among(MON, TUE, WED))).toEqual([[1, 2, 4]]);
  });

  it('tell the days of each program; one that is not used has none', () => {
    const [way, ...others] = meetings([among(MON), [], among(MON, TUE)]) ?? [];
    expect(others).toEqual([]);
    expect(way).toEqual({ patterns: [weekdayPattern(MON), null, weekdayPattern(TUE)], together: [1, 4] });
  });

  it('are looked at for four programs of any day, and not for five', () => {
    expect(together(ANY_DAY, ANY_DAY, ANY_DAY, ANY_DAY)).toEqual([[1, 2, 4, 8]]);
    expect(meetings([ANY_DAY, ANY_DAY, ANY_DAY, ANY_DAY, ANY_DAY])).toBeNull();
    expect(meetings([ANY_DAY, ANY_DAY, ANY_DAY, ANY_DAY, []])).not.toBeNull();
  });
});
