import { avoidedUse } from '@rillbook/metering/savings/avoided-use.js';
import { beforeAndAfter } from '@rillbook/metering/savings/before-and-after.js';
import { correlationOfErrors, varianceOfSum } from '@rillbook/metering/savings/month-to-month.js';
import { fitNeedBaseline, type SavingsMonth } from '@rillbook/metering/savings/need-baseline.js';
import { fitNeedLine, onNeedLine, pullOfErrors } from '@rillbook/metering/savings/need-line.js';
import { onCalendar } from '@rillbook/metering/savings/on-calendar.js';
import { studentQuantile } from '@rillbook/metering/savings/student-quantile.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { refusalOf } from '../../refusal-of.js';

const codeOf = (deed: () => unknown): string => refusalOf(deed)[0];
const NEED = [10, 15, 35, 60, 90, 110, 120, 110, 80, 45, 18, 8].map((thousands) => 1000 * thousands);
const monthAt = (at: number): string => `${2024 + Math.floor(at / 12)}-${String((at % 12) + 1).padStart(2, '0')}`;
/** Months in which the meter passed a steady part and a part of the need, give or take. */
const months = (count: number, from: number, passed: (needed: number, at: number) => number): SavingsMonth[] =>
  Array.from({ length: count }, (_, index) => {
    const at = from + index;
    const neededLitres = NEED[at % 12]! * (1 + 0.1 * Math.sin(at));
    return { month: monthAt(at), days: 30, neededLitres, meteredLitres: passed(neededLitres, at) };
  });
const wobble = (at: number): number => 1 + 0.08 * Math.sin(7.3 * at * at);
const usual = (needed: number, at: number): number => (5000 + 1.3 * needed) * wobble(at);

describe('the baseline', () => {
  it('finds what runs every day and what follows need', () => {
    const { line, fit, sd } = fitNeedBaseline(months(24, 0, (needed) => 30 * 200 + 1.4 * needed));
    expect(line.perDay).toBeCloseTo(200, 6);
    expect(line.perNeed).toBeCloseTo(1.4, 9);
    expect(fit.adjustedCvRmse).toBeCloseTo(0, 9);
    expect(sd).toBeCloseTo(0, 5);
  });

  it('says how well it fits: no bias, and the scatter that is there', () => {
    const { fit } = fitNeedBaseline(months(24, 0, usual));
    expect(Math.abs(fit.adjustedNmbe!)).toBeLessThan(0.02);
    expect(fit.adjustedCvRmse).toBeGreaterThan(0.02);
    expect(fit.adjustedCvRmse).toBeLessThan(0.15);
  });

  it('is refused where months are too few, nothing was metered, or need never changes', () => {
    expect(codeOf(() => fitNeedBaseline(months(8, 0, usual)))).toBe('BASELINE_TOO_SHORT');
    expect(codeOf(() => fitNeedBaseline(months(12, 0, () => 0)))).toBe('BASELINE_WITHOUT_USE');
    expect(codeOf(() => fitNeedBaseline(months(12, 0, usual).map((month) => ({ ...month, neededLitres: 9000 }))))).toBe(
      'BASELINE_NEED_CONSTANT',
    );
  });
});

describe('avoided use', () => {
  const baseline = fitNeedBaseline(months(24, 0, usual));

  it('is what the need would have taken before, less what was metered', () => {
    const after = months(12, 25, (needed, at) => usual(needed, at) * 0.7);
    const said = avoidedUse(baseline, after, 0.9);
    const without = after.reduce((sum, { meteredLitres }) => sum + meteredLitres / 0.7, 0);
    expect(said.litres).toBeCloseTo(said.expectedLitres - said.meteredLitres, 6);
    expect(Math.abs(said.litres - 0.3 * without)).toBeLessThan(said.halfWidthLitres);
    expect(said.isSure).toBe(true);
    expect(said.monthsOutsideRange).toEqual([]);
  });

  it('of a hot year is no loss: the need is taken into account', () => {
    const hotter = months(6, 28, usual).map((month, at) => {
      const neededLitres = month.neededLitres * 1.05;
      return { ...month, neededLitres, meteredLitres: usual(neededLitres, 28 + at) };
    });
    expect(avoidedUse(baseline, hotter, 0.9).isSure).toBe(false);
  });

  it('names the months whose need the baseline has never seen', () => {
    const dry = months(1, 30, usual).map((month) => ({ ...month, neededLitres: 400_000 }));
    expect(avoidedUse(baseline, dry, 0.9).monthsOutsideRange).toEqual([monthAt(30)]);
  });

  it('is surer with more confidence given up, and relatively surer over more months', () => {
    const halfWidth = (count: number, confidence: number): number => {
      const said = avoidedUse(baseline, months(count, 24, usual), confidence);
      return said.halfWidthLitres / said.expectedLitres;
    };
    expect(halfWidth(1, 0.8)).toBeLessThan(halfWidth(1, 0.9));
    expect(halfWidth(12, 0.9)).toBeLessThan(halfWidth(1, 0.9));
  });
});

it('errors that follow each other add up as the sum over all pairs says', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: -5, max: 5, noNaN: true }), { maxLength: 12 }),
      fc.double({ min: 0, max: 0.8, noNaN: true }),
      (weights, rho) => {
        const pairs = weights.reduce(
          (sum, one, i) => sum + weights.reduce((inner, other, j) => inner + one * other * rho ** Math.abs(i - j), 0),
          0,
        );
        expect(varianceOfSum(weights, rho)).toBeCloseTo(pairs, 8);
      },
    ),
  );
});

it('the correlation of errors is drawn to what is usual, and kept within bounds', () => {
  expect(correlationOfErrors([0, 0, 0])).toBe(0.25);
  expect(correlationOfErrors(Array.from({ length: 200 }, (_, at) => (at % 2 ? 1 : -1)))).toBe(0);
  expect(correlationOfErrors(Array.from({ length: 200 }, () => 1))).toBe(0.8);
});

it('Student’s interval is refused where it has no meaning', () => {
  expect(codeOf(() => studentQuantile(1, 10))).toBe('CONFIDENCE_OUT_OF_DOMAIN');
  expect(codeOf(() => studentQuantile(0.9, 2))).toBe('FREEDOM_OUT_OF_DOMAIN');
});

it('months before the first work and after it are told apart, and its own month belongs to neither', () => {
  const all = months(30, 0, usual).map((month, at) => (at === 27 ? { ...month, meteredLitres: null } : month));
  const { before, after, leftOut } = beforeAndAfter(all, monthAt(24), { from: monthAt(24), until: monthAt(28) });
  expect(before.map(({ month }) => month)).toEqual(all.slice(0, 24).map(({ month }) => month));
  expect(after.map(({ month }) => month)).toEqual([25, 26, 28].map(monthAt));
  expect(leftOut).toEqual([monthAt(24), monthAt(27)]);
});

it('errors of months that do not follow each other are not taken for such that do', () => {
  expect(onCalendar(['2025-11', '2026-02'].map((month, at) => ({ month, value: at + 1 })))).toEqual([1, null, null, 2]);
  // A pair of which one is not known says nothing: what is left says what it says in a row of its own.
  const steady = Array.from({ length: 40 }, (_, at) => Math.sin(at / 3));
  const holed = steady.map((error, at) => (at % 2 ? error : null));
  expect(correlationOfErrors(holed)).toBe(0.25);
  expect(correlationOfErrors(steady)).toBeGreaterThan(0.6);
  // Two months of a report that lie far apart err by themselves: their sum is surer than that of neighbours.
  const baseline = { ...fitNeedBaseline(months(24, 0, usual)), correlation: 0.5 };
  const of = (...places: number[]): number => {
    const after = places.map((at) => ({ ...months(1, 30, usual)[0]!, month: monthAt(at) }));
    return avoidedUse(baseline, after, 0.9).halfWidthLitres;
  };
  expect(of(30, 40)).toBeLessThan(of(30, 31));
});

// Montgomery and Runger, Applied Statistics and Probability for Engineers, table 11-1 and example 11-6: oxygen purity over hydrocarbon level
// (from memory; the book's own totals Σx 23.92, Σy 1843.21, Sxx 0.68088 and fit are asked for below, which the twenty pairs meet).
const HYDROCARBON = [0.99, 1.02, 1.15, 1.29, 1.46, 1.36, 0.87, 1.23, 1.55, 1.4, 1.19, 1.15, 0.98, 1.01, 1.11, 1.2, 1.26, 1.32, 1.43, 0.95];
const PURITY = [
  90.01, 89.05, 91.43, 93.74, 96.73, 94.45, 87.59, 91.77, 99.42, 93.65, 93.54, 92.52, 90.56, 89.54, 89.85, 90.39, 93.25, 93.41, 94.98,
  87.33,
];

it('line and band of errors that are strangers to each other are the textbook’s line and prediction interval', () => {
  const total = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);
  expect([total(HYDROCARBON), total(PURITY)].map((sum) => sum.toFixed(2))).toEqual(['23.92', '1843.21']);
  const rows = HYDROCARBON.map((neededLitres) => ({ days: 1, neededLitres, spread: 1 }));
  const line = fitNeedLine(rows, PURITY);
  expect([line.perDay.toFixed(3), line.perNeed.toFixed(3)]).toEqual(['74.283', '14.947']);
  const squares = total(rows.map((row, at) => (PURITY[at]! - onNeedLine(line, row)) ** 2));
  const variance = squares / (rows.length - 2);
  expect(variance.toFixed(2)).toBe('1.18');
  const at = { days: 1, neededLitres: 1 };
  const band = studentQuantile(0.95, rows.length - 2) * Math.sqrt(variance * varianceOfSum([...pullOfErrors(line, rows, at), -1], 0));
  expect([onNeedLine(line, at) - band, onNeedLine(line, at) + band].map((edge) => edge.toFixed(2))).toEqual(['86.83', '91.63']);
});
