import { dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import { onWallClock } from '@rillbook/irrigation/rules/wall-clock-run.js';
import { expect, it } from 'vitest';

/** The two changes of a North American year: 02:00 becomes 03:00 in March, and 02:00 becomes 01:00 in November. */
const changes = [
  { date: '2026-03-08', atMinute: 120, shiftMinutes: 60 },
  { date: '2026-11-01', atMinute: 120, shiftMinutes: -60 },
];
/** A run that begins so many minutes after midnight, the midnights of winter time being counted on. */
const shown = (date: string, minute: number) => {
  const begin = dayNumberOfDate(date) * 1440 + minute;
  const { date: day, beginMinute } = onWallClock({ station: 1, program: 'A', begin, end: begin + 10 } as never, changes);
  return [day, beginMinute];
};

it('shows a run as the clock on the wall did, up to the minute at which it is moved and from it on', () => {
  expect(shown('2026-03-08', 119)).toEqual(['2026-03-08', 119]);
  expect(shown('2026-03-08', 120)).toEqual(['2026-03-08', 180]);
  // In summer the clock is an hour ahead: the last minute of it shows 01:59, and the next one 01:00 again.
  expect(shown('2026-11-01', 59)).toEqual(['2026-11-01', 119]);
  expect(shown('2026-11-01', 60)).toEqual(['2026-11-01', 60]);
  expect(shown('2026-07-01', 1380)).toEqual(['2026-07-02', 0]);
});
