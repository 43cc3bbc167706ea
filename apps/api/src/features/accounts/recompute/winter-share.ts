import { dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import type { UsageInterval } from '@rillbook/metering/intervals/usage-interval.js';
import type { ComputedMonth } from '../accounts-computed.event.js';

/** Volume that intervals passed between two day numbers, each interval taken evenly; null where they leave a hole. [L] */
function passedBetween(intervals: readonly UsageInterval[], from: number, until: number): number | null {
  let litres = 0;
  let covered = 0;
  const source = (['usage', 'readings', 'bills'] as const).find((name) => intervals.some((interval) => interval.source === name));
  for (const interval of intervals.filter((one) => one.source === source)) {
    const share = Math.min(until, interval.toLocalDay) - Math.max(from, interval.fromLocalDay);
    if (share <= 0) continue;
    litres += (interval.litres * share) / (interval.toLocalDay - interval.fromLocalDay);
    covered += share;
  }
  return covered >= (until - from) * 0.8 ? (litres * (until - from)) / covered : null;
}

/**
 * What a mixed meter passes in a day when nothing is watered: the mean of the months before with neither need nor program.
 *
 * @returns litres a day; null when no such month is known
 */
export function winterLitresPerDay(intervals: readonly UsageInterval[], before: readonly ComputedMonth[]): number | null {
  const rates: number[] = [];
  for (const { account } of before) {
    const { needed, programmed, settingsGap } = account.property;
    if (needed.litres !== 0 || programmed.litres !== 0 || settingsGap.estimate) continue;
    const first = dayNumberOfDate(account.firstDate);
    const litres = passedBetween(intervals, first, first + account.daysInMonth);
    if (litres !== null) rates.push(litres / account.daysInMonth);
  }
  return rates.length ? rates.reduce((sum, rate) => sum + rate, 0) / rates.length : null;
}
