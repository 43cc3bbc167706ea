import { rankedInputs } from '@rillbook/metering/uncertainty/input-share.js';
import { probabilityAboveZero } from '@rillbook/metering/uncertainty/normal-probability.js';
import { UncertainInputs } from '@rillbook/metering/uncertainty/uncertain-input.js';
import { combined, exactly, standardDeviation } from '@rillbook/metering/uncertainty/uncertain-litres.js';
import { describe, expect, it } from 'vitest';

describe('uncertain litres', () => {
  const of = new UncertainInputs();
  const needed = { litres: 100, inputs: [of.input('area', 'z1'), of.input('eto', null)], effects: [5, 12] };
  const allowed = { litres: 80, inputs: [of.input('eto', null), of.input('area', 'z1')], effects: [9, 4] };

  it('let a shared input cancel in a difference and add in a sum', () => {
    expect(
      standardDeviation(
        combined([
          [1, needed],
          [-1, allowed],
        ]),
      ),
    ).toBeCloseTo(Math.hypot(1, 3), 12);
    expect(
      standardDeviation(
        combined([
          [1, needed],
          [1, allowed],
        ]),
      ),
    ).toBeCloseTo(Math.hypot(9, 21), 12);
    expect(standardDeviation(exactly(7))).toBe(0);
  });

  it('count a shared input once while the sum grows past all sums before', () => {
    const own = new UncertainInputs();
    const weather = own.input('eto', null);
    const zones = Array.from({ length: 5000 }, (_, at) => ({
      litres: 1000,
      inputs: [own.input('area', `z${at}`), weather],
      effects: [50, 80],
    }));
    const sum = combined(zones.map((zone) => [1, zone]));
    expect(sum.inputs).toHaveLength(5001);
    expect(standardDeviation(sum)).toBeCloseTo(Math.hypot(5000 * 80, 50 * Math.sqrt(5000)), 6);
  });

  it('keep inputs apart however many there are, whatever was added up before', () => {
    const many = Array.from({ length: 600 }, (_, at) => of.input('flow', `z${at}`));
    const sum = combined(many.map((input, at) => [1, { litres: 1, inputs: [input, of.input('rain', null)], effects: [at, 1] }]));
    expect(sum.inputs).toEqual([many[0], of.input('rain', null), ...many.slice(1)]);
    expect(sum.effects).toEqual([0, 600, ...many.slice(1).map((_, at) => at + 1)]);
    const again = combined([
      [2, sum],
      [-1, needed],
    ]);
    expect(again.inputs.length).toBe(603);
    expect(standardDeviation(again)).toBeCloseTo(Math.sqrt(4 * standardDeviation(sum) ** 2 + 169), 6);
  });

  it('rank inputs by their share of the variance', () => {
    expect(rankedInputs(needed)).toEqual([
      { input: 'eto', subjectId: null, varianceShare: expect.closeTo(144 / 169, 12) },
      { input: 'area', subjectId: 'z1', varianceShare: expect.closeTo(25 / 169, 12) },
    ]);
  });
});

// Standard normal table as printed in statistics handbooks (NIST/SEMATECH e-Handbook, 1.3.6.7.1).
describe('confidence', () => {
  it.each([
    [0, 0.5],
    [1, 0.84134],
    [1.96, 0.975],
    [2.58, 0.99506],
    [-1, 0.15866],
  ])('at %d standard deviations is %d', (z, probability) => {
    expect(Math.abs(probabilityAboveZero(z * 3, 3) - probability)).toBeLessThanOrEqual(5e-6);
  });

  it('is certain where nothing is uncertain', () => {
    expect([probabilityAboveZero(1, 0), probabilityAboveZero(0, 0), probabilityAboveZero(-1, 0)]).toEqual([1, 0, 0]);
  });
});
