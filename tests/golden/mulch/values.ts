import type { GoldenChecks } from '../golden-check.js';

export const checks = {
  'mp-000': {
    source: 'supplier coverage charts (public): 1 cubic yard coverage',
    known: 'text',
    inputs: { depth: [1, 'in'] },
    expected: { area: [324, 'ft2'] },
    tolerance: { exact: true },
  },
  'mp-002': {
    source: 'supplier coverage charts (public): 1 cubic yard coverage',
    known: 'text',
    inputs: { depth: [3, 'in'] },
    expected: { area: [108, 'ft2'] },
    tolerance: { exact: true },
  },
  'mp-003': {
    source: 'supplier coverage charts (public): 1 cubic yard coverage',
    known: 'text',
    inputs: { depth: [4, 'in'] },
    expected: { area: [81, 'ft2'] },
    tolerance: { exact: true },
  },
  'mp-005': {
    source: 'MSU Extension citing ATTRA: organic matter rule',
    known: 'text',
    inputs: { organic_matter_increase: [1, '%'] },
    expected: { water: [16500, 'gal/acre-ft of soil'] },
    tolerance: { exact: true },
    note: 'widely quoted but optimistic; treat as upper bound',
  },
  'mp-008': {
    source: 'conversion study of desert gardens (DeOreo et al.): turf net ET to volume',
    known: 'text',
    inputs: { net_ET: [83, 'in/yr'] },
    expected: { volume: [50, 'gal/ft2'] },
    tolerance: { rel: 0.04 },
  },
  'mp-009': {
    source: 'Texas A&M AgriLife extension item: mulch depth',
    known: 'text',
    inputs: { where: ['planted beds and around trees', ''] },
    expected: { depth_low: [2, 'in'], depth_high: [4, 'in'] },
    tolerance: { exact: true },
  },
} satisfies GoldenChecks;
