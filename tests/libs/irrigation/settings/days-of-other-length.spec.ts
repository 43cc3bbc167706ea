import { dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import { expect, it } from 'vitest';
import { left, minutesOf, program } from './a-replay.js';

// Public time zone rules of America/Los_Angeles in 2026: clocks move at 02:00 on 8 March and 1 November.
const clockChanges = [
  { date: '2026-03-08', atMinute: 120, shiftMinutes: 60 },
  { date: '2026-11-01', atMinute: 120, shiftMinutes: -60 },
];

const factOf = (starts: readonly number[]) => [left([program({ starts })], { effectiveAt: '2026-01-01T00:00' })];

it('water just after midnight is of the new day although the day before had 23 hours', () => {
  const firstDay = dayNumberOfDate('2026-03-08');
  expect(minutesOf(factOf([0]), { firstDay, days: 3, clockChanges })).toEqual([10, 10, 10]);
  expect(minutesOf(factOf([1435]), { firstDay, days: 3, clockChanges })).toEqual([10, 10, 10]);
});

it('water late on a day of 25 hours is of that day, and what runs past midnight of the next', () => {
  const firstDay = dayNumberOfDate('2026-11-01');
  expect(minutesOf(factOf([1410]), { firstDay, days: 2, clockChanges })).toEqual([10, 10]);
  expect(minutesOf(factOf([1437]), { firstDay, days: 1, clockChanges })).toEqual([10]);
});
