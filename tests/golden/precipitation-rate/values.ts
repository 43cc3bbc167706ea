import type { GoldenChecks } from '../golden-check.js';

export const checks = {
  'ss-029': {
    source: 'public page quoting total-area method: PR=96.25*GPM/area; catch 0.1 in in 10 min',
    known: 'text',
    inputs: { depth: [0.1, 'in'], time: [10, 'min'] },
    expected: { minutes_per_inch: [100, 'min'], 'minutes_for_1.5in': [150, 'min'] },
    tolerance: { exact: true },
  },
  'ss-030': {
    source: '96.25 derivation (60/7.48*12): total-area precipitation rate',
    known: 'memory',
    inputs: { flow: [12, 'gpm'], area: [1000, 'ft2'] },
    expected: { PR: [1.155, 'in/h'] },
    tolerance: { abs: 0.001 },
    note: 'arithmetic',
  },
  'ss-050': {
    source: 'drip grid application rate: PR=231.1*q/(row*emitter spacing in)',
    known: 'memory',
    inputs: { q: [0.9, 'gph'], row: [18, 'in'], emitter: [12, 'in'] },
    expected: { PR: [0.963, 'in/h'] },
    tolerance: { abs: 0.002 },
    note: 'arithmetic',
  },
  'ss-051': {
    source: 'metric drip example of a public extension text, mm/h = (L/h)/m2: 2.3 L/m2/day, 3 L/h x 2 emitters/m2',
    known: 'text',
    inputs: { need: [2.3, 'L/m2/d'], emitter: [3, 'L/h'], density: [2, '1/m2'] },
    expected: { run: [23, 'min/d'] },
    tolerance: { abs: 0.5 },
  },

  // Further examples of the same texts.
  'total-area-of-ten-heads': {
    source: 'public irrigation course page, total area method: 60 x 15 ft, 6 heads of 1.0 gpm and 4 of 0.5 gpm',
    known: 'text',
    inputs: { count: [[6, 4], ''], flow: [[1, 0.5], 'gpm'], length: [60, 'ft'], width: [15, 'ft'] },
    expected: { flow: [8, 'gpm'], PR: [0.86, 'in/h'] },
    tolerance: { flow: 1e-9, PR: 0.005 },
  },
  'head-spacing': {
    source: '96.25 x Q / (head spacing x row spacing): 25 x 30 ft, 6 gpm',
    known: 'memory',
    inputs: { head_spacing: [25, 'ft'], row_spacing: [30, 'ft'], flow: [6, 'gpm'] },
    expected: { PR: [0.77, 'in/h'] },
    tolerance: { abs: 0.005 },
    note: 'one page prints 0.89 for a triangular layout: it applies 0.866 to a row spacing that already holds it',
  },
  'catch-cans': {
    source: 'public worksheet of irrigation auditors: 3.66 x V / (t x A); numbers by arithmetic',
    known: 'memory',
    inputs: { mean_catch: [25, 'ml'], time: [10, 'min'], mouth: [16.6, 'in2'] },
    expected: { PR: [0.551, 'in/h'] },
    tolerance: { abs: 0.0005 },
  },
  'us-constants': {
    source: 'constants of the US forms: total area (96.25), catch cans (3.66), drip grid (231.1)',
    known: 'text',
    inputs: { one: ['1 gpm on 1 ft2, 1 ml in 1 min in a can of 1 in2, 1 gph on 1 in by 1 in', ''] },
    expected: { total_area: [96.25, ''], catch_cans: [3.66, ''], drip_grid: [231.1, ''] },
    tolerance: { total_area: 0.005, catch_cans: 0.005, drip_grid: 0.1 },
  },
} satisfies GoldenChecks;
