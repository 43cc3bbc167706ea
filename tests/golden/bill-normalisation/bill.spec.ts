import { dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import { shareOfInterval } from '@rillbook/metering/intervals/apportion-interval.js';
import { meteredDays } from '@rillbook/metering/intervals/metered-days.js';
import { expect, it } from 'vitest';
import { expectGolden, given, type GoldenCheck } from '../golden-check.js';
import { checks } from './values.js';

const unknown = () => null;

it('bill-over-two-months', () => {
  const check: GoldenCheck = checks['bill-over-two-months'];
  const [from, until] = ['first_day', 'first_day_not_billed'].map((name) => dayNumberOfDate(String(check.inputs[name]?.[0])));
  const bill = { fromLocalDay: from ?? 0, toLocalDay: until ?? 0, litres: given(check, 'volume'), sdLitres: 0, source: 'bills' as const };
  const total = (first: string, days: number) =>
    meteredDays([bill], dayNumberOfDate(first), days, () => unknown, { share: 0, run: 0 }).days.reduce((sum, day) => sum + day.litres, 0);
  expectGolden(check, { per_day: total('2026-06-10', 1), May: total('2026-05-01', 31), June: total('2026-06-01', 30) });
  const june = dayNumberOfDate('2026-06-01');
  expect(shareOfInterval([bill.fromLocalDay, bill.toLocalDay], [june, bill.toLocalDay], unknown)).toBeCloseTo(17 / 31, 12);
});
