import { elapsedMinutes, elapsedMinutesOfWallTime, localDayNumber } from '@rillbook/irrigation/calendar/elapsed-minutes.js';
import { dateOfDayNumber, dayNumberOfDate, daysOfMonth, weekdayOfDayNumber } from '@rillbook/irrigation/calendar/local-date.js';
import { describe, expect, it } from 'vitest';

// Public time zone rules of America/Los_Angeles in 2026: clocks move at 02:00 on 8 March and 1 November.
const spring = { date: '2026-03-08', atMinute: 120, shiftMinutes: 60 };
const autumn = { date: '2026-11-01', atMinute: 120, shiftMinutes: -60 };
const clockChanges = [spring, autumn];
const march8 = dayNumberOfDate('2026-03-08');
const november1 = dayNumberOfDate('2026-11-01');
const dayLength = (day: number) => elapsedMinutes(day + 1, 0, clockChanges) - elapsedMinutes(day, 0, clockChanges);

describe('elapsed minutes', () => {
  it('gives days their real length', () => {
    expect([march8 - 1, march8, march8 + 1, november1, november1 + 1].map(dayLength)).toEqual([1440, 1380, 1440, 1500, 1440]);
  });

  it('takes a skipped wall time to the first instant after', () => {
    const after = elapsedMinutes(march8, 180, clockChanges);
    expect([120, 150, 179].map((minute) => elapsedMinutes(march8, minute, clockChanges))).toEqual([after, after, after]);
    expect(elapsedMinutes(march8, 119, clockChanges)).toBe(after - 1);
  });

  it('takes a repeated wall time to its first occurrence', () => {
    expect(elapsedMinutes(november1, 90, clockChanges) - elapsedMinutes(november1, 0, clockChanges)).toBe(90);
    expect(elapsedMinutes(november1, 120, clockChanges) - elapsedMinutes(november1, 0, clockChanges)).toBe(180);
  });

  it('reads wall times and refuses what is none', () => {
    expect(elapsedMinutesOfWallTime('1970-01-02T01:30', [])).toBe(1530);
    expect(() => elapsedMinutesOfWallTime('2026-06-01 05:00', [])).toThrow(expect.objectContaining({ code: 'WALL_TIME_INVALID' }));
  });

  it('counts seconds of a wall time as shares of a minute', () => {
    expect(elapsedMinutesOfWallTime('1970-01-01T00:00:30', [])).toBe(0.5);
    expect(elapsedMinutesOfWallTime('1970-01-01T23:59:15', [])).toBe(1439.25);
  });

  it('skips an hour in spring also after an autumn that gave one', () => {
    const years = [autumn, { date: '2027-03-14', atMinute: 120, shiftMinutes: 60 }];
    const march14 = dayNumberOfDate('2027-03-14');
    const midnight = elapsedMinutes(march14, 0, years);
    expect(midnight).toBe(march14 * 1440 + 60);
    expect([119, 120, 179, 180, 181].map((minute) => elapsedMinutes(march14, minute, years) - midnight)).toEqual([119, 120, 120, 120, 121]);
  });

  it('numbers local days with the share of their real length', () => {
    expect(localDayNumber('1970-01-02', 690, 1380)).toBe(1.5);
    expect(() => localDayNumber('2026-03-08', 1400, 1380)).toThrow(expect.objectContaining({ code: 'LOCAL_DAY_INVALID' }));
  });
});

describe('local dates', () => {
  it('count days, months and weekdays', () => {
    expect(dateOfDayNumber(dayNumberOfDate('2024-02-29') + 1)).toBe('2024-03-01');
    expect(daysOfMonth('2024-02')).toEqual({ firstDay: dayNumberOfDate('2024-02-01'), days: 29 });
    expect(weekdayOfDayNumber(march8)).toBe(6);
  });

  it.each(['2026-02-29', '2026-13-01', '26-01-01', ''])('refuse %s', (date) => {
    expect(() => dayNumberOfDate(date)).toThrow(expect.objectContaining({ code: 'LOCAL_DATE_INVALID', details: { date } }));
  });

  it('refuse a month that is none', () => {
    expect(() => daysOfMonth('2026-00')).toThrow(expect.objectContaining({ code: 'MONTH_INVALID' }));
  });
});
