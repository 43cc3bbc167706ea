import type { Episode } from '@rillbook/metering/detection/evidence/episode.js';
import { stoodRightly } from '@rillbook/metering/detection/readings/rightly-still.js';
import { dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import { expect, it } from 'vitest';
import { monthlyMeter } from '../../../../support/worlds/monthly-meter.mjs';

const evidence = monthlyMeter(3);
const stuck = (code: string) =>
  ({ says: { code, details: {} }, meterId: 'm1', fromDate: '2024-03-01', untilDate: '2024-04-01' }) as unknown as Episode;
const programmed = (litres: number) => ({ ...evidence, programmedLitres: new Float64Array(evidence.days).fill(litres) });

it('is a register between whose readings nothing was programmed, or nobody knows what was', () => {
  expect(stoodRightly(stuck('stuck'), [programmed(0)])).toBe(true);
  expect(stoodRightly(stuck('stuck'), [programmed(Number.NaN)])).toBe(true);
});

it('is not one that water should have moved, nor any other doubt, nor a meter of which nothing is known', () => {
  expect(stoodRightly(stuck('stuck'), [programmed(500)])).toBe(false);
  expect(stoodRightly(stuck('lower than last'), [programmed(0)])).toBe(false);
  expect(stoodRightly(stuck('stuck'), [])).toBe(false);
});

/** Water on these days only, of a meter told in steps of 100 L whose evidence begins on some day. */
function wateredOn(dates: readonly string[], litres: number, begins = '2024-01-01') {
  const firstDay = dayNumberOfDate(begins);
  const days = dayNumberOfDate('2024-06-01') - firstDay;
  const programmedLitres = new Float64Array(days);
  for (const date of dates) programmedLitres[dayNumberOfDate(date) - firstDay] = litres;
  return { ...evidence, firstDay, days, programmedLitres, resolutionLitres: 100 };
}

it('counts the days between the readings: not those of the readings, which ran before or after them', () => {
  expect(stoodRightly(stuck('stuck'), [wateredOn(['2024-03-01', '2024-04-01'], 5000)])).toBe(true);
  expect(stoodRightly(stuck('stuck'), [wateredOn(['2024-03-02'], 5000)])).toBe(false);
  expect(stoodRightly(stuck('stuck'), [wateredOn(['2024-03-31'], 5000)])).toBe(false);
});

it('moves by more than two steps of a register, or may stand', () => {
  expect(stoodRightly(stuck('stuck'), [wateredOn(['2024-03-10'], 200)])).toBe(true);
  expect(stoodRightly(stuck('stuck'), [wateredOn(['2024-03-10'], 201)])).toBe(false);
});

it('knows only what its own evidence covers', () => {
  expect(stoodRightly(stuck('stuck'), [wateredOn(['2024-03-11'], 5000, '2024-03-11')])).toBe(false);
  expect(stoodRightly(stuck('stuck'), [wateredOn(['2024-05-20'], 5000, '2024-05-01')])).toBe(true);
  const other = { ...programmed(500), meterId: 'm2' };
  expect(stoodRightly(stuck('stuck'), [other, programmed(0)])).toBe(true);
});
