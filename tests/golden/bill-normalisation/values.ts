import type { GoldenChecks } from '../golden-check.js';

export const checks = {
  'bill-over-two-months': {
    source: 'day-count rule of bill normalisation, use per day = volume / days: 18 May to 17 June (31 days), by arithmetic',
    known: 'memory',
    inputs: { first_day: ['2026-05-18', ''], first_day_not_billed: ['2026-06-18', ''], volume: [62, 'CCF'] },
    expected: { per_day: [2, 'CCF'], May: [28, 'CCF'], June: [34, 'CCF'] },
    tolerance: { abs: 1e-9 },
    note: 'the year is of this project, the rule knows none',
  },
} satisfies GoldenChecks;
