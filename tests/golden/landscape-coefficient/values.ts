import type { GoldenChecks } from '../golden-check.js';

export const checks = {
  'pl-001': {
    source:
      'WUCOLS data file public/WUCOLS.json, repository ucdavis/WUCOLS-plant-search-database @d806ca6 (repo LICENSE: MIT): waterUseClassifications',
    known: 'text',
    inputs: { category: ['VL,LO,M,H', ''] },
    expected: { VL: ['< 0.10', ''], LO: ['0.10-0.30', ''], M: ['0.40-0.60', ''], H: ['0.70-0.90', ''] },
    tolerance: { exact: true },
  },
  'pl-030': {
    source:
      'Costello et al. 2000, A Guide to Estimating Irrigation Water Needs of Landscape Plantings in California: Total Water Applied section (page 39 of the hosted copy)',
    known: 'text',
    inputs: { ETL: [3.72, 'in'], IE: [[0.3, 0.6, 0.9], ''] },
    expected: { TWA: [[12.4, 6.2, 4.1], 'in'] },
    tolerance: { abs: 0.05 },
  },
  'pl-032': {
    source: 'Costello et al. 2000, A Guide to Estimating Irrigation Water Needs of Landscape Plantings in California: Case 1 with IE 0.70',
    known: 'memory',
    inputs: { ETL: [3.72, 'in'], IE: [0.7, ''] },
    expected: { TWA: [5.31, 'in'] },
    tolerance: { abs: 0.01 },
    note: 'inputs are in the text read; the quotient is arithmetic',
  },
  'pl-033': {
    source:
      'Costello et al. 2000, A Guide to Estimating Irrigation Water Needs of Landscape Plantings in California: density guidance for single plants (page 51)',
    known: 'text',
    inputs: { plant: ['shrub | very large shrub | tree under 15 ft | larger tree', ''] },
    expected: { kd: ['1.0 | 1.1 | 1.0 | 1.1 to 1.2', ''], kmc_large_tree_wind: ['1.2 to 1.3', ''] },
    tolerance: { exact: true },
  },
  'pl-035': {
    source: 'ANSI/ASABE S623.1 / SLIDE: turf and other factors',
    known: 'memory',
    inputs: { type: ['cool turf|warm turf|annual flowers|woody or herbaceous dry climate|humid climate|desert-adapted', ''] },
    expected: { PF: ['0.8|0.6|0.8|0.5|0.7|0.3', ''] },
    tolerance: { exact: true },
    note: 'turf values not seen in an official text in this session',
  },
  'pl-036': {
    source: 'FAO Irrigation & Drainage Paper 56 (Allen et al. 1998) Tables 12, 17, 22: kthorp/pyfao56 tools/tables.py',
    known: 'library-test',
    inputs: { crop: ['turfgrass cool season', ''] },
    expected: {
      Kc_ini: [0.9, ''],
      Kc_mid: [0.95, ''],
      Kc_end: [0.95, ''],
      h: [0.1, 'm'],
      Kcb_ini: [0.85, ''],
      Kcb_mid: [0.9, ''],
      Kcb_end: [0.9, ''],
      Zr_min: [0.5, 'm'],
      Zr_max: [1, 'm'],
      p: [0.4, ''],
    },
    tolerance: { exact: true },
  },
  'pl-038': {
    source: 'FAO Irrigation & Drainage Paper 56 (Allen et al. 1998) Tables 12, 22: kthorp/pyfao56 tools/tables.py',
    known: 'library-test',
    inputs: { crop: ['citrus, no ground cover, 70% canopy', ''] },
    expected: { Kc_ini: [0.7, ''], Kc_mid: [0.65, ''], Kc_end: [0.7, ''], Zr_min: [1.2, 'm'], Zr_max: [1.5, 'm'], p: [0.5, ''] },
    tolerance: { exact: true },
  },
} satisfies GoldenChecks;
