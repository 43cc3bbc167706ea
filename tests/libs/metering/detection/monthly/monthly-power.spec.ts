import { judgeMonthly } from '@rillbook/metering/detection/monthly/judge-monthly.js';
import { expect, it } from 'vitest';
import { monthlyMeter, type MonthlyWorld } from '../../../../support/worlds/monthly-meter.mjs';

// A sample of what `npm run prove -- monthly-detection` counts at length: seeds are fixed, so the counts are too.
const SITES = 50;
const HABIT = 24;
const thresholds = { minConfidence: 0.8, minLitres: 0, minMoney: 0 };
const seeds = Array.from({ length: SITES }, (_, at) => at + 1);
const alarms = (seed: number, world: Partial<MonthlyWorld>) =>
  judgeMonthly(monthlyMeter(seed, world), thresholds).filter(({ kind }) => kind !== 'flow to be tested');

const found = (share: number, noise: number) =>
  seeds.filter((seed) => {
    const world = { readings: HABIT + 2, noise, trouble: { fromReading: HABIT, share } };
    const begun = monthlyMeter(seed, world).intervals[HABIT]?.fromLocalDay ?? Number.NaN;
    return alarms(seed, world).some(({ kind, openedLocalDay }) => kind === 'unexplained use' && openedLocalDay > begun);
  }).length;

// At 0.03 in a year 50 years hold 1.5; six or more come by chance in less than one of 200 such samples.
it.each([0.02, 0.03])('hardly tells of what is not there where months scatter by %d: 50 years of 50 properties', (noise) => {
  expect(seeds.flatMap((seed) => alarms(seed, { readings: 12, noise })).length).toBeLessThan(6);
});

it('is not alarmed more by large scatter once that is a habit', () => {
  const late = seeds.flatMap((seed) => {
    const { intervals } = monthlyMeter(seed, { readings: 24, noise: 0.06 });
    return alarms(seed, { readings: 24, noise: 0.06 }).filter(({ openedLocalDay }) => openedLocalDay > (intervals[11]?.toLocalDay ?? 0));
  });
  // 300 properties had 48 in a year: 50 years hold 8; sixteen or more come by chance in about one of 120 such samples.
  expect(late.length).toBeLessThan(16);
});

it('finds leaks of a tenth within two readings where months scatter by 3 %, larger ones always, and half a tenth seldom', () => {
  const [small, tenth, larger] = [found(0.05, 0.03), found(0.1, 0.03), found(0.2, 0.03)];
  // 0.90 is expected, as counted by 300 others; 0.79 is two and a half standard errors of fifty below.
  expect(tenth / SITES).toBeGreaterThan(0.79);
  // A false alarm that is still open hides one.
  expect(larger).toBeGreaterThanOrEqual(SITES - 1);
  // A test that always cried would find these too.
  expect(small / SITES).toBeLessThan(0.6);
});

it('finds leaks of a tenth always where months scatter by 2 %, and most of half a tenth', () => {
  expect(found(0.1, 0.02)).toBeGreaterThanOrEqual(SITES - 1);
  // Half a tenth: 0.73 is expected, where limits that are the same for every scatter found 0.57; 0.58 is two and a half standard errors below.
  expect(found(0.05, 0.02) / SITES).toBeGreaterThan(0.58);
});
