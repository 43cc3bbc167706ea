import { weekdayPattern } from '@rillbook/irrigation/planning/days/day-pattern.js';
import type { Assignment, Ground } from '@rillbook/irrigation/planning/pricing/assignment.js';
import type { SlotOption } from '@rillbook/irrigation/planning/pricing/slots.js';
import { turnDays } from '@rillbook/irrigation/planning/search/turn-days.js';
import { expect, it } from 'vitest';

const [MON, TUE, WED, THU] = [1, 2, 4, 8];

/** An hour a day, which each program may fill alone; minutes by steps of one. */
const ground = { frame: { step: 1, hours: { longest: [60, 30], longestOfDate: [60, 30] } }, perDay: 60 } as unknown as Ground;

/** A program that may have any of these weekdays. */
const among = (...masks: readonly number[]) =>
  ({ starts: 1, days: { perWeek: 1, patterns: masks.map(weekdayPattern) } }) as unknown as SlotOption;

/** Masks of the days that programs get, whose one zone each runs so long; null where a program gets none. */
function daysOf(options: readonly (SlotOption | null)[], minutes: readonly number[]): readonly (number | null)[] {
  const before: Assignment = { options, patterns: options.map(() => null), slotOf: minutes.map((_, zone) => zone), steps: minutes };
  const after = turnDays(ground, before);
  expect({ ...after, patterns: before.patterns }).toEqual(before);
  return after.patterns.map((pattern) => pattern?.mask ?? null);
}

it('programs that fit keep the first of their days', () => {
  expect(daysOf([among(MON, TUE), among(MON, TUE)], [30, 30])).toEqual([MON, MON]);
});

it('programs too long for one day together are turned until they fall on days of their own', () => {
  expect(daysOf([among(MON), among(MON, TUE)], [40, 30])).toEqual([MON, TUE]);
  expect(daysOf([among(MON, TUE, WED), among(MON, TUE, WED), among(MON, TUE, WED)], [40, 40, 40]).toSorted()).toEqual([MON, TUE, WED]);
  expect(daysOf([among(MON, TUE), among(MON, TUE), among(TUE, THU)], [40, 40, 40]).toSorted()).toEqual([MON, TUE, THU]);
});

it('a program of two starts runs twice as long on its days', () => {
  const twice = (...masks: readonly number[]) => ({ ...among(...masks), starts: 2 });
  expect(daysOf([twice(MON), among(MON, TUE)], [15, 40])).toEqual([MON, TUE]);
  expect(daysOf([twice(MON), among(MON, TUE)], [15, 30])).toEqual([MON, MON]);
});

it('where nothing fits, the least too long is taken', () => {
  // Together 75 min too long; the 50 alone leaves 85 of an hour, the 45 alone 90, both apart from the 40 are 95.
  expect(daysOf([among(MON, TUE), among(MON), among(MON, TUE)], [50, 40, 45])).toEqual([TUE, MON, MON]);
});

it('a program without minutes or without an option gets no days, and the others are turned beside it', () => {
  expect(daysOf([among(MON, TUE), among(MON), among(MON, TUE)], [0, 40, 30])).toEqual([null, MON, TUE]);
  expect(daysOf([null, among(MON), among(MON, TUE)], [30, 40, 30])).toEqual([null, MON, TUE]);
});
