import type { GoldenChecks } from '../golden-check.js';

export const checks = {
  'ob-060': {
    source: 'Irvine Ranch Water District weekly ET report (potable accounts): week row',
    known: 'text',
    inputs: { ET: [0.67, 'in/week'], area: [1, 'acre'], implied_factor: [0.75, ''] },
    expected: { allocation: [18.24, 'CCF/acre'] },
    tolerance: { abs: 0.02 },
    note: 'ET x 36.30 CCF/acre-in x 0.75 reproduces the printed value; the factor is inferred from the numbers',
  },
  'ob-062': {
    source: 'Irvine Ranch Water District weekly ET report (potable accounts): week row',
    known: 'text',
    inputs: { ET: [0.49, 'in/week'], area: [1, 'acre'], implied_factor: [0.75, ''] },
    expected: { allocation: [13.34, 'CCF/acre'] },
    tolerance: { abs: 0.02 },
    note: 'ET x 36.30 CCF/acre-in x 0.75 reproduces the printed value; the factor is inferred from the numbers',
  },
  'ob-063': {
    source: 'Irvine Ranch Water District weekly ET report (potable accounts): week row',
    known: 'text',
    inputs: { ET: [0.78, 'in/week'], area: [1, 'acre'], implied_factor: [0.75, ''] },
    expected: { allocation: [21.24, 'CCF/acre'] },
    tolerance: { abs: 0.02 },
    note: 'ET x 36.30 CCF/acre-in x 0.75 reproduces the printed value; the factor is inferred from the numbers',
  },
  'district-week-0.44': {
    source: 'Irvine Ranch Water District weekly ET report (potable accounts): week row',
    known: 'text',
    inputs: { ET: [0.44, 'in/week'], area: [1, 'acre'], implied_factor: [0.75, ''] },
    expected: { allocation: [11.98, 'CCF/acre'] },
    tolerance: { abs: 0.02 },
    note: 'the factor is inferred from the numbers',
  },
  'area-budget-plan': {
    source: 'City of Fort Collins, Colorado: worked example of a landscape water budget',
    known: 'text',
    inputs: { moderate: [[6380, 8100], 'ft2'], high: [[5330, 1500], 'ft2'], low: [[820, 490], 'ft2'] },
    expected: { area: [22620, 'ft2'], volume: [336140, 'gal/yr'], average: [14.9, 'gal/ft2'] },
    tolerance: { area: 0.001, volume: 0.5, average: 0.05 },
  },
} satisfies GoldenChecks;
