import { dayOfYear } from '@rillbook/agronomy/weather/day-of-year.js';
import { describe, expect, it } from 'vitest';

describe('dayOfYear (FAO-56, Annex 2, Table 2.5)', () => {
  it.each([
    ['2015-01-01', 1],
    ['2015-03-01', 60],
    ['2016-03-01', 61],
    ['2015-07-01', 182],
    ['2015-12-31', 365],
    ['2016-12-31', 366],
    ['2000-02-29', 60],
  ])('%s', (date, day) => expect(dayOfYear(date)).toBe(day));

  it.each(['2015-02-29', '1900-02-29', '2015-13-01', '2015-00-10', '2015-06-31', '2015-1-1', '', '2015-07-01T00:00'])(
    'refuses %s',
    (date) => {
      expect(() => dayOfYear(date)).toThrowError(expect.objectContaining({ code: 'DATE_OUT_OF_DOMAIN', details: { date } }));
    },
  );
});
