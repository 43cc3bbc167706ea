import { uniformityEffect } from '@rillbook/metering/account/needed/needed-of-zone.js';
import { defaultRelativeSd } from '@rillbook/metering/uncertainty/default-relative-sd.js';
import { expect, it } from 'vitest';
import { aZone } from '../a-property.js';

/** Run-time multiplier of the lowest quarter, as the need is grossed up by it. [Irrigation Association 2005, 1 / (0.4 + 0.6 DU)] */
const multiplier = (duLq: number) => 1 / (0.4 + 0.6 * duLq);

it.each([0.4, 0.65, 0.9, 1])('of a zone with DU %f the need falls as its run-time multiplier does', (duLq) => {
  const { assumed, recorded } = defaultRelativeSd.uniformity;
  const slope = Math.log(multiplier(duLq * (1 + 1e-6)) / multiplier(duLq * (1 - 1e-6))) / 2e-6;
  expect(uniformityEffect(aZone({ duLq, assumed: ['duLq'] }))).toBeCloseTo(slope * assumed, 8);
  expect(uniformityEffect(aZone({ duLq, assumed: ['plantFactor'] }))).toBeCloseTo(slope * recorded, 8);
  expect(slope).toBeLessThan(0);
});
