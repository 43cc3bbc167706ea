import { actualEfficiency, potentialEfficiency } from '@rillbook/irrigation/hardware/uniformity/application-efficiency.js';
import { lowestMean } from '@rillbook/irrigation/hardware/uniformity/catch.js';
import {
  lowHalfUniformity,
  lowQuarterUniformity,
  uniformityCoefficient,
} from '@rillbook/irrigation/hardware/uniformity/distribution-uniformity.js';
import { overlapOfLaterals } from '@rillbook/irrigation/hardware/uniformity/overlap-of-laterals.js';
import { driestWindow, schedulingCoefficient } from '@rillbook/irrigation/hardware/uniformity/scheduling-coefficient.js';
import { millimetresPerHour } from '@rillbook/units/depth-rate.js';
import { metres, millimetres } from '@rillbook/units/length.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

/** What cans of one test caught: never all empty. */
const catches = fc
  .array(fc.double({ min: 0, max: 100, noNaN: true }), { minLength: 1, maxLength: 60 })
  .filter((cans) => cans.some((each) => each > 0.001));
const measures = [lowQuarterUniformity, lowHalfUniformity, uniformityCoefficient] as const;
const DUST = 1e-9;

describe('uniformity', () => {
  it('of the low quarter and half lies between 0 and 1, the quarter never above the half', () => {
    fc.assert(
      fc.property(catches, (cans) => {
        const [quarter, half] = [lowQuarterUniformity(cans), lowHalfUniformity(cans)];
        expect(quarter).toBeGreaterThanOrEqual(0);
        expect(half).toBeLessThanOrEqual(1 + DUST);
        expect(quarter).toBeLessThanOrEqual(half + DUST);
      }),
    );
  });

  it('by the coefficient is at most 1, and above -1', () => {
    fc.assert(
      fc.property(catches, (cans) => {
        expect(uniformityCoefficient(cans)).toBeLessThanOrEqual(1);
        expect(uniformityCoefficient(cans)).toBeGreaterThan(-1);
      }),
    );
  });

  it('knows no unit: cans counted in another are as even', () => {
    fc.assert(
      fc.property(catches, fc.double({ min: 0.01, max: 100, noNaN: true }), (cans, scale) => {
        for (const measure of measures) expect(measure(cans.map((each) => each * scale))).toBeCloseTo(measure(cans), 9);
      }),
    );
  });

  it('knows no order of cans', () => {
    fc.assert(
      fc.property(catches, (cans) => {
        for (const measure of measures) expect(measure([...cans].reverse())).toBeCloseTo(measure(cans), 9);
      }),
    );
  });

  it('of equal cans is 1', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), fc.double({ min: 0.01, max: 100, noNaN: true }), (count, each) => {
        for (const measure of measures) expect(measure(new Array<number>(count).fill(each))).toBeCloseTo(1, 12);
      }),
    );
  });

  it('falls when the driest can gets less', () => {
    expect(lowQuarterUniformity([1, 4, 4, 4])).toBeLessThan(lowQuarterUniformity([2, 4, 4, 4]));
  });

  it.each([
    [1, 1],
    [5, 1],
    [6, 2],
    [10, 3],
    [15, 4],
    [46, 12],
  ])('of %d cans counts the lowest %d: round(n/4), half a can upward, at least one', (count, lowest) => {
    const cans = Array.from({ length: count }, (_, at) => at + 1);
    expect(lowestMean(cans, 0.25)).toBeCloseTo((lowest + 1) / 2, 12);
  });

  it.each<[string, readonly number[]]>([
    ['no can', []],
    ['empty cans', [0, 0]],
    ['a can below zero', [3, -1]],
    ['a can of no number', [3, Number.NaN]],
  ])('refuses %s by code', (_, cans) => {
    for (const measure of measures) expect(() => measure(cans)).toThrow(expect.objectContaining({ code: 'CATCHES_OUT_OF_DOMAIN' }));
  });
});

describe('application efficiency', () => {
  const rates = [8, 9, 10, 12].map((rate) => millimetresPerHour(rate));
  const applied = millimetresPerHour(12);

  it('is the driest quarter over what left the nozzles', () => {
    expect(potentialEfficiency(rates, applied)).toBeCloseTo(8 / 12, 12);
  });

  it('never rises with time, and falls once the driest quarter is full', () => {
    const at = (hours: number) => actualEfficiency(rates, applied, { hours, depletion: millimetres(16) });
    expect(at(1)).toBe(at(2));
    expect(at(2)).toBeCloseTo(8 / 12, 12);
    expect(at(4)).toBeCloseTo(at(2) / 2, 12);
    expect(actualEfficiency(rates, applied, { hours: 1, depletion: millimetres(0) })).toBe(0);
  });

  it('refuses what was not applied, and no time, by code', () => {
    expect(() => potentialEfficiency(rates, millimetresPerHour(0))).toThrow(
      expect.objectContaining({ code: 'PRECIPITATION_RATE_OUT_OF_DOMAIN' }),
    );
    expect(() => actualEfficiency(rates, applied, { hours: 0, depletion: millimetres(1) })).toThrow(
      expect.objectContaining({ code: 'IRRIGATION_RUN_OUT_OF_DOMAIN' }),
    );
  });
});

describe('overlap of laterals', () => {
  const side = fc.array(fc.double({ min: 0, max: 10, noNaN: true }), { maxLength: 14 });

  it('loses no water', () => {
    fc.assert(
      fc.property(side, side, fc.integer({ min: 1, max: 8 }), (left, right, places) => {
        const between = overlapOfLaterals(left, right, metres(places * 3), metres(3));
        const sum = (row: readonly number[]) => row.reduce((total, each) => total + each, 0);
        expect(between).toHaveLength(places);
        expect(sum(between)).toBeCloseTo(sum(left) + sum(right), 9);
      }),
    );
  });

  it('mirrors when the sides change places', () => {
    const [left, right] = [
      [4, 3, 1],
      [5, 2],
    ];
    const between = overlapOfLaterals(left, right, metres(12), metres(3));
    expect(between).toEqual([4, 3, 3, 5]);
    expect(overlapOfLaterals(right, left, metres(12), metres(3))).toEqual([...between].reverse());
    // A can may stay empty.
    expect(overlapOfLaterals([0, 2], [0], metres(6), metres(3))).toEqual([0, 2]);
  });

  it('refuses cans that do not divide the spacing, by code', () => {
    expect(() => overlapOfLaterals([1], [1], metres(10), metres(3))).toThrow(expect.objectContaining({ code: 'OVERLAP_OUT_OF_DOMAIN' }));
    expect(() => overlapOfLaterals([1], [1], metres(-6), metres(-3))).toThrow(expect.objectContaining({ code: 'OVERLAP_OUT_OF_DOMAIN' }));
    expect(() => overlapOfLaterals([1], [1], metres(10), metres(0))).toThrow(expect.objectContaining({ code: 'OVERLAP_OUT_OF_DOMAIN' }));
  });
});

describe('scheduling coefficient', () => {
  const grid = [
    [9, 8, 7, 8],
    [8, 2, 3, 8],
    [9, 9, 7, 1],
  ];

  it('takes the driest rectangle of cans, not the driest can', () => {
    expect(driestWindow(grid, { rows: 1, columns: 1 })).toBe(1);
    expect(driestWindow(grid, { rows: 1, columns: 2 })).toBe(2.5);
    expect(driestWindow(grid, { rows: 3, columns: 4 })).toBeCloseTo(79 / 12, 12);
  });

  it('is never below 1', () => {
    expect(schedulingCoefficient(6, 6)).toBe(1);
    expect(schedulingCoefficient(79 / 12, driestWindow(grid, { rows: 1, columns: 2 }))).toBeGreaterThan(1);
    expect(() => schedulingCoefficient(5, 6)).toThrow(expect.objectContaining({ code: 'SCHEDULING_COEFFICIENT_OUT_OF_DOMAIN' }));
    expect(() => schedulingCoefficient(5, 0)).toThrow(expect.objectContaining({ code: 'SCHEDULING_COEFFICIENT_OUT_OF_DOMAIN' }));
  });

  it.each([
    { rows: 4, columns: 1 },
    { rows: 1, columns: 5 },
    { rows: 0, columns: 1 },
    { rows: 1.5, columns: 1 },
  ])('refuses a window of $rows by $columns by code', (window) => {
    expect(() => driestWindow(grid, window)).toThrow(expect.objectContaining({ code: 'CAN_WINDOW_OUT_OF_DOMAIN' }));
  });
});
