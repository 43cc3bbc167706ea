import { elapsedMinutes, elapsedMinutesOfWallTime, localDayNumber } from '@rillbook/irrigation/calendar/elapsed-minutes.js';
import { dateOfDayNumber, dayNumberOfDate, daysOfMonth, weekdayOfDayNumber } from '@rillbook/irrigation/calendar/local-date.js';
import { describe, expect, it } from 'vitest';

const DAY_MS = 86_400_000;
const refused = (code: string) => expect.objectContaining({ code });

describe('dates and day numbers', () => {
  it('are those of the Gregorian calendar, day by day over two centuries and both kinds of turn of a century', () => {
    const [first, last] = [Date.UTC(1899, 11, 25) / DAY_MS, Date.UTC(2104, 2, 5) / DAY_MS];
    const wrong: string[] = [];
    for (let day = first; day <= last; day += 1) {
      const date = new Date(day * DAY_MS).toISOString().slice(0, 10);
      const weekday = (new Date(day * DAY_MS).getUTCDay() + 6) % 7;
      if (dateOfDayNumber(day) !== date || dayNumberOfDate(date) !== day || weekdayOfDayNumber(day) !== weekday) wrong.push(date);
    }
    expect(wrong).toEqual([]);
  });

  it.each(['0100-01-01', '0100-03-01', '0999-12-31', '1000-01-01', '1600-02-29', '9999-12-31'])('far off: %s', (date) => {
    const day = Date.parse(date) / DAY_MS;
    expect([dayNumberOfDate(date), dateOfDayNumber(day)]).toEqual([day, date]);
  });

  it.each([-683_004, 2_932_897, Number.NaN, Number.POSITIVE_INFINITY])('number %d has no date of four digits and is refused', (day) => {
    expect(() => dateOfDayNumber(day)).toThrow(refused('LOCAL_DATE_INVALID'));
  });

  it('belong to the whole day in which a share of it lies, before 1970 too', () => {
    expect([1, 1.9, -0.1, -1].map(dateOfDayNumber)).toEqual(['1970-01-02', '1970-01-02', '1969-12-31', '1969-12-31']);
  });

  it.each([
    ...['2026-02-30', '1900-02-29', '2100-02-29', '2026-04-31', '2026-06-31', '2026-09-31', '2026-11-31', '2026-01-32', '2026-12-00'],
    ...[
      '2026-00-10',
      '0099-12-31',
      '2026/01-01',
      '2026-01/01',
      '2026-01-011',
      ' 2026-01-01',
      'a026-01-01',
      '2026-0:-01',
      '2026-01-1',
      '2026-01--1',
    ],
  ])('refuse %s, which is no date', (date) => {
    expect(() => dayNumberOfDate(date)).toThrow(refused('LOCAL_DATE_INVALID'));
  });

  it('know the length of every month', () => {
    const lengths = (year: number) =>
      Array.from({ length: 12 }, (_, month) => daysOfMonth(`${year}-${String(month + 1).padStart(2, '0')}`).days);
    expect(lengths(2000)).toEqual([31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]);
    expect(lengths(2100)).toEqual([31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]);
  });

  it.each(['2026-13', '2026-1', 'x2026-01', '2026-01-01', '226-01'])('refuse %s, which is no month', (month) => {
    expect(() => daysOfMonth(month)).toThrow(refused('MONTH_INVALID'));
  });
});

describe('wall times', () => {
  it.each([
    ...['2026-06-01T24:00', '2026-06-01T05:60', '2026-06-01T05:00:60', '2026-06-01T5:00', '2026-06-01T05:00Z', 'x2026-06-01T05:00'],
    ...['2026-06-01T30:00', '2026-06-01T05:00:', '2026-06-01'],
  ])('refuse %s', (wallTime) => {
    expect(() => elapsedMinutesOfWallTime(wallTime, [])).toThrow(
      expect.objectContaining({ code: 'WALL_TIME_INVALID', details: { wallTime } }),
    );
  });

  it.each([
    ['1970-01-01T00:00', 0],
    ['1970-01-01T19:59', 1199],
    ['1970-01-01T20:05', 1205],
    ['1970-01-01T23:59', 1439],
  ])('read %s', (wallTime, minutes) => {
    expect(elapsedMinutesOfWallTime(wallTime, [])).toBe(minutes);
  });

  it('are those of the place that is asked for, whichever was asked for before', () => {
    const here = [{ date: '2026-03-08', atMinute: 120, shiftMinutes: 60 }];
    const there = [{ date: '2026-03-29', atMinute: 60, shiftMinutes: 60 }];
    const noon = (changes: typeof here) => elapsedMinutes(dayNumberOfDate('2026-03-20'), 720, changes);
    const wall = dayNumberOfDate('2026-03-20') * 1440 + 720;
    expect([noon(here), noon(there), noon(here), noon([]), noon(there)]).toEqual([wall - 60, wall, wall - 60, wall, wall]);
  });

  it('have their day number from midnight to midnight, and none beyond', () => {
    expect([localDayNumber('1970-01-02', 0, 1440), localDayNumber('1970-01-02', 1440, 1440)]).toEqual([1, 2]);
    for (const [minutes, inDay] of [
      [-1, 1440],
      [1381, 1380],
      [0, 0],
      [0, -1],
      [Number.NaN, 1440],
    ] as const)
      expect(() => localDayNumber('1970-01-02', minutes, inDay)).toThrow(
        expect.objectContaining({
          code: 'LOCAL_DAY_INVALID',
          details: { date: '1970-01-02', minutesSinceMidnight: minutes, minutesInDay: inDay },
        }),
      );
  });
});
