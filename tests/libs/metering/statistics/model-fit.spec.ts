import { correlation, determination, errorAutocorrelation } from '@rillbook/metering/statistics/correlation.js';
import { modelFit } from '@rillbook/metering/statistics/model-fit.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const pairs = fc.array(fc.tuple(fc.double({ min: 1, max: 100, noNaN: true }), fc.double({ min: 1, max: 100, noNaN: true })), {
  minLength: 4,
  maxLength: 40,
});
const split = (rows: readonly (readonly [number, number])[]) => [rows.map(([one]) => one), rows.map(([, other]) => other)] as const;

describe('fit of a model', () => {
  it('is perfect where it says what was measured', () => {
    expect(modelFit([1, 2, 4], [1, 2, 4], 1)).toEqual({
      rmse: 0,
      cvRmse: 0,
      adjustedCvRmse: 0,
      nmbe: 0,
      adjustedNmbe: 0,
      nmae: 0,
      mape: 0,
    });
  });

  it('has a bias above zero where the model says too much', () => {
    expect(modelFit([10, 10], [12, 12], 0).nmbe).toBeCloseTo(0.2, 12);
    expect(modelFit([10, 10], [8, 8], 0).nmbe).toBeCloseTo(-0.2, 12);
  });

  it('has no relative measure where the mean is zero, nor a share of each value where one is', () => {
    const fit = modelFit([-1, 1], [0, 0], 0);
    expect(fit).toMatchObject({ rmse: 1, cvRmse: null, adjustedCvRmse: null, nmbe: null, adjustedNmbe: null, nmae: null, mape: 1 });
    expect(modelFit([0, 2], [1, 1], 0)).toMatchObject({ cvRmse: 1, mape: null });
  });

  it('the bias is never larger than the mean error, nor that than the root mean square; parameters only make it worse', () => {
    fc.assert(
      fc.property(pairs, (rows) => {
        const [observed, predicted] = split(rows);
        const fit = modelFit(observed, predicted, 2);
        const values = [
          Math.abs(fit.nmbe ?? Number.NaN),
          fit.nmae ?? Number.NaN,
          fit.cvRmse ?? Number.NaN,
          fit.adjustedCvRmse ?? Number.NaN,
        ];
        values.slice(1).forEach((value, at) => expect(value).toBeGreaterThanOrEqual((values[at] ?? Number.NaN) - 1e-9));
      }),
    );
  });

  it('refuses series that cannot be compared, and too many parameters, by code', () => {
    expect(() => modelFit([], [], 0)).toThrow(expect.objectContaining({ code: 'SERIES_OUT_OF_DOMAIN' }));
    expect(() => modelFit([1, 2], [1], 0)).toThrow(expect.objectContaining({ code: 'SERIES_OUT_OF_DOMAIN' }));
    expect(() => modelFit([1, Number.NaN], [1, 2], 0)).toThrow(expect.objectContaining({ code: 'SERIES_OUT_OF_DOMAIN' }));
    expect(() => modelFit([1, 2], [1, 2], 2)).toThrow(expect.objectContaining({ code: 'PARAMETERS_OUT_OF_DOMAIN' }));
  });
});

describe('correlation', () => {
  it('lies between -1 and 1 and does not see scale nor order of the two', () => {
    fc.assert(
      fc.property(pairs, (rows) => {
        const [one, other] = split(rows);
        const r = correlation(one, other);
        fc.pre(r !== null && Math.max(...one) - Math.min(...one) > 0.01 && Math.max(...other) - Math.min(...other) > 0.01);
        expect(Math.abs(r ?? Number.NaN)).toBeLessThanOrEqual(1 + 1e-9);
        expect(correlation(other, one)).toBeCloseTo(r ?? Number.NaN, 9);
        expect(
          correlation(
            one.map((value) => 3 * value + 7),
            other,
          ),
        ).toBeCloseTo(r ?? Number.NaN, 6);
      }),
    );
  });

  it('of a straight line is 1 or -1, of a series that does not vary not known', () => {
    expect(correlation([1, 2, 3], [10, 20, 30])).toBeCloseTo(1, 12);
    expect(correlation([1, 2, 3], [3, 2, 1])).toBeCloseTo(-1, 12);
    expect(correlation([1, 2, 3], [5, 5, 5])).toBeNull();
    expect(determination([1, 2, 3], [5, 5, 5])).toBeNull();
  });

  it('of errors with the ones before is above zero where the model drifts', () => {
    expect(errorAutocorrelation([0, 0, 0, 0, 0], [1, 2, 3, 4, 5])).toBeCloseTo(1, 12);
    expect(errorAutocorrelation([0, 0, 0, 0], [1, -1, 1, -1])).toBeCloseTo(-1, 12);
    expect(errorAutocorrelation([1, 1, 1], [2, 2, 2])).toBeNull();
    expect(() => errorAutocorrelation([1, 2], [1, 2])).toThrow(expect.objectContaining({ code: 'SERIES_OUT_OF_DOMAIN' }));
  });

  it('refuses more parameters than the pairs allow by code', () => {
    expect(() => determination([1, 2, 3], [1, 2, 3], 2)).toThrow(expect.objectContaining({ code: 'PARAMETERS_OUT_OF_DOMAIN' }));
  });
});
