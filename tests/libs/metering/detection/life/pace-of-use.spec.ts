import { type DayOfUse, paceOfUse } from '@rillbook/metering/detection/life/pace-of-use.js';
import { expect, it } from 'vitest';

/** Fourteen days with 100 L allowed on each: what was used on the first eleven, and on the last three. */
const days = (before: number, lately: number): DayOfUse[] =>
  Array.from({ length: 14 }, (_, day) => ({ usedL: day < 11 ? before : lately, allowedL: 100 }));

// Two windows of different length, each with its own limit: Site Reliability Workbook, chapter 5. The limits are assumptions of this project.
it('asks for somebody now where water runs fast in both windows', () => {
  expect(paceOfUse(days(120, 300))).toEqual({ shortShare: 3, longShare: (11 * 120 + 900) / 1400, verdict: 'act now' });
});

it('is not alarmed by days that stand alone, nor by what is over', () => {
  // Three times as much on three days after a calm fortnight is not yet half as much again.
  expect(paceOfUse(days(80, 310))?.verdict).toBe('watch');
  // Far too much until three days ago, and nothing since.
  expect(paceOfUse(days(400, 0))).toMatchObject({ shortShare: 0, verdict: 'watch' });
  expect(paceOfUse(days(90, 100))?.verdict).toBe('within');
  expect(paceOfUse(days(100, 100))?.verdict).toBe('within');
});

it('says nothing of days that are not known, of too few, and where nothing was allowed', () => {
  const [first, ...rest] = days(500, 500);
  expect(paceOfUse(rest)).toBeNull();
  expect(paceOfUse([{ ...first!, usedL: null }, ...rest])).toBeNull();
  expect(paceOfUse([{ ...first!, allowedL: null }, ...rest])).toBeNull();
  expect(paceOfUse(days(10, 10).map((day) => ({ ...day, allowedL: 0 })))).toBeNull();
  // Only the newest fourteen count.
  expect(paceOfUse([{ usedL: null, allowedL: null }, ...days(100, 100)])?.longShare).toBe(1);
});
