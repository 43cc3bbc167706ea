import type { GoldenChecks } from '../golden-check.js';

export const checks = {
  'ml-041': {
    source: 'NIST/SEMATECH e-Handbook 6.3.2.4: EWMA limits',
    known: 'text',
    inputs: { target: [50, ''], s: [2.0539, ''], lambda: [0.3, ''], k: [3, ''] },
    expected: { UCL: [52.5884, ''], LCL: [47.4115, ''], out_of_control: [0, ''] },
    tolerance: { abs: 0.001 },
  },
  'ml-042': {
    source: 'NIST/SEMATECH e-Handbook 6.3.2.3: tabular CUSUM',
    known: 'memory',
    inputs: {
      data: [
        [
          324.925, 324.675, 324.725, 324.35, 325.35, 325.225, 324.125, 324.525, 325.225, 324.6, 324.625, 325.15, 328.325, 327.25, 327.825,
          328.5, 326.675, 327.775, 326.875, 328.35,
        ],
        '',
      ],
      target: [325, ''],
      k: [0.3175, ''],
      h: [4.1959, ''],
    },
    expected: {
      S_hi: [[0, 0, 0, 0, 0.03, 0, 0, 0, 0, 0, 0, 0, 3.01, 4.94, 7.45, 10.63, 11.99, 14.44, 16, 19.04], ''],
      S_lo: [[0, 0.01, 0, 0.33, 0, 0, 0.56, 0.72, 0.17, 0.25, 0.31, 0, 0, 0, 0, 0, 0, 0, 0, 0], ''],
      first_signal_sample: [14, ''],
    },
    tolerance: { abs: 0.011 },
    note: 'data, k and h recalled; recursion recomputed',
  },
  'ml-044': {
    source: 'eemeter (open library), test of its metrics: daily means, intercept only',
    known: 'library-test',
    inputs: { observed: [[6, 1, 1, 6], ''], predicted: [[3.5, 3.5, 3.5, 3.5], ''] },
    expected: { rmse: [2.5, ''], cvrmse: [0.714, ''], nmae: [0.714, ''], nmbe: [0, ''], mape: [1.458, ''] },
    tolerance: { abs: 0.0006 },
  },
  'ml-045': {
    source: 'ASHRAE Guideline 14 thresholds as restated in public code: monthly and hourly',
    known: 'text',
    inputs: { interval: ['monthly | hourly', ''] },
    expected: { max_CVRMSE: ['0.15 | 0.30', ''], max_abs_NMBE: ['0.05 | 0.10', ''] },
    tolerance: { exact: true },
    note: 'secondary source; guideline itself not read',
  },

  // Further numbers of the same pages.
  'ewma-values': {
    source: 'NIST/SEMATECH e-Handbook 6.3.2.4: 20 data points and their EWMA, the first being the target',
    known: 'memory',
    inputs: {
      data: [[52, 47, 53, 49.3, 50.1, 47, 51, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1], ''],
      target: [50, ''],
      lambda: [0.3, ''],
    },
    expected: {
      EWMA: [
        [
          50, 50.6, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33, 50.11, 49.36, 49.52, 50.05, 49.38, 49.92, 50.73, 51.23,
          51.94, 51.99,
        ],
        '',
      ],
    },
    tolerance: { abs: 0.0051 },
    note: 'data and averages recalled; recursion recomputed',
  },
  'fit-with-two-parameters': {
    source: 'eemeter (open library), test of its metrics: five values, two parameters, errors predicted less observed',
    known: 'library-test',
    inputs: { observed: [[1, 3, 4, 1, 6], ''], predicted: [[2, 3, 3, 2, 4], ''], parameters: [2, ''] },
    expected: {
      r2: [0.972, ''],
      adjusted_r2: [0.944, ''],
      cvrmse: [0.394, ''],
      adjusted_cvrmse: [0.509, ''],
      mape: [0.517, ''],
      nmae: [0.333, ''],
      nmbe: [-0.067, ''],
      autocorrelation: [-0.674, ''],
    },
    tolerance: { abs: 0.0006 },
  },
} satisfies GoldenChecks;
