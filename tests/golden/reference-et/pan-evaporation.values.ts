import type { GoldenChecks } from '../golden-check.js';

export const checks = {
  'et-110': {
    source: 'DWR Bulletin 113-3 (1975) Table 1, class A pan in irrigated pasture, UC Riverside page: zone Sacramento Valley',
    known: 'text',
    inputs: { monthly_pan: [[1.5, 2.4, 3.9, 5.7, 7.5, 9.3, 10.1, 8.6, 6.8, 4.6, 2.2, 1.4], 'in'] },
    expected: { annual: [64, 'in'] },
    tolerance: { abs: 0.05 },
    note: 'pan evaporation, not ETo; Apr-Sep pan coefficient for this setting is of order 0.8 (memory)',
  },
  'et-112': {
    source: 'DWR Bulletin 113-3 (1975) Table 1, class A pan in irrigated pasture, UC Riverside page: zone North Coast coastal valleys',
    known: 'text',
    inputs: { monthly_pan: [[0.7, 1.3, 2.6, 3.2, 4.2, 4.6, 4.5, 4.3, 3.6, 2.3, 1.5, 1], 'in'] },
    expected: { annual: [33.8, 'in'] },
    tolerance: { abs: 0.05 },
    note: 'pan evaporation, not ETo; Apr-Sep pan coefficient for this setting is of order 0.8 (memory)',
  },
  'et-113': {
    source: 'DWR Bulletin 113-3 (1975) Table 1, class A pan in irrigated pasture, UC Riverside page: zone Central Coast coastal valleys',
    known: 'text',
    inputs: { monthly_pan: [[2.5, 2.9, 4.1, 5.1, 6, 6.3, 6.8, 6.1, 5, 4.3, 3, 2.1], 'in'] },
    expected: { annual: [54.2, 'in'] },
    tolerance: { abs: 0.05 },
    note: 'pan evaporation, not ETo; Apr-Sep pan coefficient for this setting is of order 0.8 (memory)',
  },
} satisfies GoldenChecks;
