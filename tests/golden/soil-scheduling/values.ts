import type { GoldenChecks } from '../golden-check.js';

export const checks = {
  'ss-000': {
    source: 'UC Drought Management site, soil characteristics table: available water-holding capacity',
    known: 'text',
    inputs: { texture: ['very coarse sands', ''] },
    expected: { AWHC_low: [0.4, 'in/ft'], AWHC_high: [0.75, 'in/ft'] },
    tolerance: { exact: true },
  },
  'ss-002': {
    source: 'UC Drought Management site, soil characteristics table: available water-holding capacity',
    known: 'text',
    inputs: { texture: ['sandy loams, fine sandy loams', ''] },
    expected: { AWHC_low: [1.25, 'in/ft'], AWHC_high: [1.75, 'in/ft'] },
    tolerance: { exact: true },
  },
  'ss-003': {
    source: 'UC Drought Management site, soil characteristics table: available water-holding capacity',
    known: 'text',
    inputs: { texture: ['very fine sandy loams, loams, silt loams', ''] },
    expected: { AWHC_low: [1.5, 'in/ft'], AWHC_high: [2.3, 'in/ft'] },
    tolerance: { exact: true },
  },
  'ss-005': {
    source: 'UC Drought Management site, soil characteristics table: available water-holding capacity',
    known: 'text',
    inputs: { texture: ['sandy clays, silty clays, clays', ''] },
    expected: { AWHC_low: [1.6, 'in/ft'], AWHC_high: [2.5, 'in/ft'] },
    tolerance: { exact: true },
  },
  'ss-006': {
    source: 'NRCS feel-and-appearance page: sandy clay loam, loam, silt loam',
    known: 'text',
    inputs: { texture: ['SCL/L/SiL', ''] },
    expected: { AWC_low: [1.5, 'in/ft'], AWC_high: [2.1, 'in/ft'] },
    tolerance: { exact: true },
  },
  'ss-010': {
    source:
      'Irrigation Association 2005 scheduling table (flat ground) as coded in a university package: ASA from basic intake rate, slope 0-3%',
    known: 'text',
    inputs: { basic_intake_rate: [0.1, 'in/h'] },
    expected: { ASA: [0.2, 'in'] },
    tolerance: { exact: true },
    note: 'texture name for this intake rate from memory: clay',
  },
  'ss-011': {
    source:
      'Irrigation Association 2005 scheduling table (flat ground) as coded in a university package: ASA from basic intake rate, slope 0-3%',
    known: 'text',
    inputs: { basic_intake_rate: [0.15, 'in/h'] },
    expected: { ASA: [0.23, 'in'] },
    tolerance: { exact: true },
    note: 'texture name for this intake rate from memory: silty clay',
  },
  'ss-013': {
    source:
      'Irrigation Association 2005 scheduling table (flat ground) as coded in a university package: ASA from basic intake rate, slope 0-3%',
    known: 'text',
    inputs: { basic_intake_rate: [0.35, 'in/h'] },
    expected: { ASA: [0.3, 'in'] },
    tolerance: { exact: true },
    note: 'texture name for this intake rate from memory: loam',
  },
  'ss-014': {
    source:
      'Irrigation Association 2005 scheduling table (flat ground) as coded in a university package: ASA from basic intake rate, slope 0-3%',
    known: 'text',
    inputs: { basic_intake_rate: [0.4, 'in/h'] },
    expected: { ASA: [0.33, 'in'] },
    tolerance: { exact: true },
    note: 'texture name for this intake rate from memory: sandy loam',
  },
  'ss-016': {
    source:
      'Irrigation Association 2005 scheduling table (flat ground) as coded in a university package: ASA from basic intake rate, slope 0-3%',
    known: 'text',
    inputs: { basic_intake_rate: [0.6, 'in/h'] },
    expected: { ASA: [0.4, 'in'] },
    tolerance: { exact: true },
    note: 'texture name for this intake rate from memory: sand',
  },
  'ss-017': {
    source: 'same university package: RTmax = 60*ASA/(PR-IR)',
    known: 'memory',
    inputs: { PR: [1.6, 'in/h'], IR: [0.1, 'in/h'], ASA: [0.2, 'in'] },
    expected: { RTmax: [8, 'min'] },
    tolerance: { abs: 0.01 },
    note: 'formula read; numbers are arithmetic',
  },
  'ss-062': {
    source: 'public horticulture course page on irrigation design: scheduling coefficient',
    known: 'text',
    inputs: { mean_rate: [12, 'mm/h'], min_rate: [7, 'mm/h'], need: [9, 'mm/d'] },
    expected: { SC: [1.7, ''], run: [1.3, 'h/d'] },
    tolerance: { SC: 0.05, run: 0.05 },
  },
  'ss-067': {
    source: 'City of Phoenix Water / water awareness page: watering depth by plant size',
    known: 'text',
    inputs: { plant: ['small plants | shrubs | trees', ''] },
    expected: { depth: ['1 ft | 2 ft | 3 ft', ''] },
    tolerance: { exact: true },
  },
  'ss-068': {
    source: 'Arizona landscape watering guideline table (Tucson): depth by plant group',
    known: 'text',
    inputs: { plant: ['trees | shrubs | groundcover, cacti, annuals | grass', ''] },
    expected: { depth_in: ['24-36 | 18-24 | 8-12 | 6-10', ''] },
    tolerance: { exact: true },
  },

  // Further published schedules and rows of the same tables.
  'coarse-and-fine-sands': {
    source: 'UC Drought Management site, soil characteristics table: available water-holding capacity',
    known: 'text',
    inputs: { texture: ['coarse sands, fine sands, loamy sands', ''] },
    expected: { AWHC_low: [0.75, 'in/ft'], AWHC_high: [1.25, 'in/ft'] },
    tolerance: { exact: true },
  },
  'clay-loams': {
    source: 'UC Drought Management site, soil characteristics table: available water-holding capacity',
    known: 'text',
    inputs: { texture: ['clay loams, silty clay loams, sandy clay loams', ''] },
    expected: { AWHC_low: [1.75, 'in/ft'], AWHC_high: [2.5, 'in/ft'] },
    tolerance: { exact: true },
  },
  'three-days-a-week': {
    source: 'a regional water programme of Texas: 0.20 in/d at 0.50 in/h, watering on 3 days a week',
    known: 'text',
    inputs: { need: [0.2, 'in/d'], PR: [0.5, 'in/h'], days: [3, ''] },
    expected: { per_day: [24, 'min'], per_week: [168, 'min'], per_allowed_day: [56, 'min'] },
    tolerance: { abs: 1e-9 },
  },
  'half-an-inch': {
    source: 'Utah state landscape guide: 0.5 in with pop-up sprays and with impact rotors, rates implied by it',
    known: 'text',
    inputs: { depth: [0.5, 'in'], PR: [[1.5, 0.75], 'in/h'] },
    expected: { run: [[20, 40], 'min'] },
    tolerance: { abs: 1e-9 },
  },
} satisfies GoldenChecks;
