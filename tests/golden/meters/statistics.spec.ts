import { determination, errorAutocorrelation } from '@rillbook/metering/statistics/correlation.js';
import { tabularCusum } from '@rillbook/metering/statistics/cusum.js';
import { ewma, ewmaLimits, outOfControl } from '@rillbook/metering/statistics/ewma.js';
import { type FitInterval, fitLimits, fitsWithinLimits } from '@rillbook/metering/statistics/fit-limits.js';
import { modelFit } from '@rillbook/metering/statistics/model-fit.js';
import { expect, it } from 'vitest';
import { expectGolden, given, givenRow, type GoldenCheck, type GoldenValue } from '../golden-check.js';
import { checks } from './statistics.values.js';

type Computed = Readonly<Record<string, GoldenValue>>;

/** What is computed; a measure that does not exist fails as a word where a number is published. */
const known = (value: number | null) => value ?? 'none';
const intervals: readonly FitInterval[] = ['monthly', 'hourly'];

const computed: Readonly<Record<keyof typeof checks, (check: GoldenCheck) => Computed>> = {
  'ml-041': (check) => {
    const { lower, upper } = ewmaLimits(given(check, 'target'), given(check, 's'), given(check, 'lambda'), given(check, 'k'));
    // The check gives no series; that of the same page is recalled beside it.
    const series = ewma(givenRow(checks['ewma-values'], 'data'), given(check, 'target'), given(check, 'lambda'));
    return { UCL: upper, LCL: lower, out_of_control: outOfControl(series, { lower, upper }).length };
  },
  'ml-042': (check) => {
    const design = { target: given(check, 'target'), slack: given(check, 'k'), decision: given(check, 'h') };
    const { high, low, firstSignal } = tabularCusum(givenRow(check, 'data'), design);
    return { S_hi: high, S_lo: low, first_signal_sample: firstSignal === null ? 'none' : firstSignal + 1 };
  },
  'ml-044': (check) => {
    const fit = modelFit(givenRow(check, 'observed'), givenRow(check, 'predicted'), 1);
    return { rmse: fit.rmse, cvrmse: known(fit.cvRmse), nmae: known(fit.nmae), nmbe: known(fit.nmbe), mape: known(fit.mape) };
  },
  'ml-045': () => ({
    max_CVRMSE: intervals.map((interval) => fitLimits[interval].cvRmse.toFixed(2)).join(' | '),
    max_abs_NMBE: intervals.map((interval) => fitLimits[interval].nmbe.toFixed(2)).join(' | '),
  }),
  'ewma-values': (check) => ({
    EWMA: [given(check, 'target'), ...ewma(givenRow(check, 'data'), given(check, 'target'), given(check, 'lambda'))],
  }),
  'fit-with-two-parameters': (check) => {
    const [observed, predicted] = [givenRow(check, 'observed'), givenRow(check, 'predicted')];
    const parameters = given(check, 'parameters');
    const fit = modelFit(observed, predicted, parameters);
    return {
      r2: known(determination(observed, predicted)),
      adjusted_r2: known(determination(observed, predicted, parameters)),
      cvrmse: known(fit.cvRmse),
      adjusted_cvrmse: known(fit.adjustedCvRmse),
      mape: known(fit.mape),
      nmae: known(fit.nmae),
      nmbe: known(fit.nmbe),
      autocorrelation: known(errorAutocorrelation(observed, predicted)),
    };
  },
};

it.each(Object.entries(computed))('%s', (id, compute) => {
  const check: GoldenCheck = checks[id as keyof typeof checks];
  expectGolden(check, compute(check));
});

it('the limits of ml-045 judge: at the limit is within, above is not, unknown is unknown', () => {
  expect(fitsWithinLimits({ adjustedCvRmse: 0.15, adjustedNmbe: -0.05 }, 'monthly')).toBe(true);
  expect(fitsWithinLimits({ adjustedCvRmse: 0.16, adjustedNmbe: 0 }, 'monthly')).toBe(false);
  expect(fitsWithinLimits({ adjustedCvRmse: 0.16, adjustedNmbe: -0.11 }, 'hourly')).toBe(false);
  expect(fitsWithinLimits({ adjustedCvRmse: null, adjustedNmbe: null }, 'monthly')).toBeNull();
});
