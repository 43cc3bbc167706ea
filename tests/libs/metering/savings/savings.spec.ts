import { avoidedUse } from '@rillbook/metering/savings/avoided-use.js';
import { beforeAndAfter } from '@rillbook/metering/savings/before-and-after.js';
import { correlationOfErrors, varianceOfSum } from '@rillbook/metering/savings/month-to-month.js';
import { fitNeedBaseline, type SavingsMonth } from '@rillbook/metering/savings/need-baseline.js';
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
