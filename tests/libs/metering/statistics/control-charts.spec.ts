import { tabularCusum } from '@rillbook/metering/statistics/cusum.js';
import { ewma, ewmaLimits, outOfControl } from '@rillbook/metering/statistics/ewma.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const series = fc.array(fc.double({ min: -100, max: 100, noNaN: true }), { maxLength: 40 });
const weights = fc.double({ min: 0.05, max: 1, noNaN: true });

describe('exponentially weighted moving average', () => {
  it('stays within the values and the target', () => {
    fc.assert(
      fc.property(series, weights, (values, weight) => {
        const [low, high] = [Math.min(0, ...values), Math.max(0, ...values)];
        for (const average of ewma(values, 0, weight)) {
          expect(average).toBeGreaterThanOrEqual(low - 1e-9);
          expect(average).toBeLessThanOrEqual(high + 1e-9);
        }
      }),
    );
  });

  it('with all weight on the newest is the series itself', () => {
    expect(ewma([3, 1, 2], 9, 1)).toEqual([3, 1, 2]);
    expect(ewma([], 9, 0.3)).toEqual([]);
  });

  it('finds a lasting shift that no single value shows', () => {
    const limits = ewmaLimits(10, 1, 0.2, 3);
    const shifted = [...new Array<number>(10).fill(10), ...new Array<number>(10).fill(11.5)];
    expect(shifted.every((value) => Math.abs(value - 10) < 3)).toBe(true);
    expect(outOfControl(ewma(shifted, 10, 0.2), limits).at(0)).toBeGreaterThanOrEqual(10);
    expect(outOfControl(ewma(new Array<number>(20).fill(10), 10, 0.2), limits)).toEqual([]);
  });

  it('has limits on both sides alike, and both sides count', () => {
    const { lower, upper } = ewmaLimits(50, 2, 0.3, 3);
    expect(upper - 50).toBeCloseTo(50 - lower, 12);
    expect(outOfControl([lower - 0.01, lower, 50, upper, upper + 0.01], { lower, upper })).toEqual([0, 4]);
  });

  it.each([0, -0.1, 1.1, Number.NaN])('refuses a weight of %d by code', (weight) => {
    expect(() => ewma([1], 0, weight)).toThrow(expect.objectContaining({ code: 'EWMA_OUT_OF_DOMAIN' }));
    expect(() => ewmaLimits(0, 1, weight, 3)).toThrow(expect.objectContaining({ code: 'EWMA_OUT_OF_DOMAIN' }));
  });

  it('refuses a value of no number by code', () => {
    expect(() => ewma([1, Number.NaN], 0, 0.3)).toThrow(expect.objectContaining({ code: 'EWMA_OUT_OF_DOMAIN' }));
  });
});

describe('cumulative sum', () => {
  const design = { target: 0, slack: 0.5, decision: 4 };

  it('never falls below zero, and mirrors when the series does', () => {
    fc.assert(
      fc.property(series, (values) => {
        const [up, down] = [
          tabularCusum(values, design),
          tabularCusum(
            values.map((value) => -value),
            design,
          ),
        ];
        for (const sum of [...up.high, ...up.low]) expect(sum).toBeGreaterThanOrEqual(0);
        expect(down.low).toEqual(up.high);
        expect(down.firstSignal).toBe(up.firstSignal);
      }),
    );
  });

  it('forgives what lies within the slack, and signals a shift on either side', () => {
    expect(tabularCusum(new Array<number>(50).fill(0.5), design).firstSignal).toBeNull();
    expect(tabularCusum([0, 0, 3, 3], design).firstSignal).toBe(3);
    expect(tabularCusum([0, 0, -3, -3], design).firstSignal).toBe(3);
    expect(tabularCusum([], design)).toEqual({ high: [], low: [], firstSignal: null });
  });

  it('refuses a slack below zero by code', () => {
    expect(() => tabularCusum([1], { ...design, slack: -1 })).toThrow(expect.objectContaining({ code: 'CUSUM_OUT_OF_DOMAIN' }));
    expect(() => tabularCusum([Number.NaN], design)).toThrow(expect.objectContaining({ code: 'CUSUM_OUT_OF_DOMAIN' }));
  });
});
