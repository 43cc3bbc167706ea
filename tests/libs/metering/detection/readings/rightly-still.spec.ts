import type { Episode } from '@rillbook/metering/detection/evidence/episode.js';
import { stoodRightly } from '@rillbook/metering/detection/readings/rightly-still.js';
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
