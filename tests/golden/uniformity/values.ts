import type { GoldenChecks } from '../golden-check.js';

export const checks = {
  'ss-020': {
    source: 'spreval (NCSU, open library), reference pages: CU example',
    known: 'library-test',
    inputs: { catch: [[47, 42, 45, 24, 13, 26, 33, 34, 27, 30, 40, 44, 32, 12, 12], 'ml'] },
    expected: { CU: [69.13955, '%'] },
    tolerance: { abs: 0.001 },
  },
  'ss-021': {
    source: 'spreval (NCSU, open library), reference pages: DU (low quarter) example',
    known: 'library-test',
    inputs: { catch: [[47, 42, 45, 24, 13, 26, 33, 34, 27, 30, 40, 44, 32, 12, 12], 'ml'], n_low: ['round(n/4)=4', ''] },
    expected: { DU_LQ: [49.62039, '%'] },
    tolerance: { abs: 0.001 },
  },
  'ss-023': {
    source: 'Merriam & Keller 1978 pp.41-44 via spreval (NCSU, open library), reference pages: PELQ',
    known: 'library-test',
    inputs: {
      catch_rate: [[0.23, 0.31, 0.24, 0.24, 0.28, 0.31, 0.27, 0.22, 0.26, 0.31, 0.31, 0.25, 0.2, 0.22, 0.32], 'in/h'],
      head_flow: [4.6, 'gpm'],
      spacing: ['30 x 50', 'ft'],
    },
    expected: { PELQ: [73.64892, '%'] },
    tolerance: { abs: 0.01 },
    note: 'uses constant 96.3',
  },
  'ss-024': {
    source: 'Merriam & Keller 1978 via spreval (NCSU, open library), reference pages: AELQ, SMD 4.4 in, 23.5 h',
    known: 'library-test',
    inputs: {
      catch_rate: [[0.23, 0.31, 0.24, 0.24, 0.28, 0.31, 0.27, 0.22, 0.26, 0.31, 0.31, 0.25, 0.2, 0.22, 0.32], 'in/h'],
      head_flow: [4.6, 'gpm'],
      spacing: ['30 x 50', 'ft'],
      SMD: [4.4, 'in'],
      duration: [23.5, 'h'],
    },
    expected: { AELQ: [63.40039, '%'] },
    tolerance: { abs: 0.01 },
  },
  'ss-026': {
    source: 'spreval (NCSU, open library), landscape vignette: turf rotor audit, 15 min, 46 cans',
    known: 'library-test',
    inputs: {
      catch: [
        [
          9, 11, 11, 13, 17, 14, 15, 15, 3, 15, 13, 6, 14, 11, 7, 11, 14, 17, 9, 6, 4, 8, 9, 12, 26, 17, 8, 4, 6, 10, 14, 16, 14, 9, 6, 7,
          10, 6, 16, 11, 3, 16, 10, 2, 5, 11,
        ],
        'ml',
      ],
    },
    expected: { CU: [64, '%'], DU_LH: [64, '%'], DU_LQ: [45, '%'] },
    tolerance: { abs: 0.6 },
  },
  'ss-027': {
    source: 'spreval (NCSU, open library), reference pages: overlap(): 50 ft laterals, 10 ft cans',
    known: 'library-test',
    inputs: {
      left: [[0.28, 0.24, 0.21, 0.1], 'in'],
      right: [[0.23, 0.21, 0.3], 'in'],
      lateral_spacing: [50, 'ft'],
      can_spacing: [10, 'ft'],
    },
    expected: { sum_left: [[0.28, 0.24, 0.51, 0.31, 0.23], 'in'] },
    tolerance: { abs: 0.001 },
  },

  // Further numbers of the same pages and data.
  'low-half': {
    source: 'spreval (NCSU, open library), reference pages: DU (low half) of the same cans',
    known: 'library-test',
    inputs: { catch: [[47, 42, 45, 24, 13, 26, 33, 34, 27, 30, 40, 44, 32, 12, 12], 'ml'], n_low: ['round(n/2)=8', ''] },
    expected: { DU_LH: [71.58351, '%'] },
    tolerance: { abs: 0.001 },
  },
  'short-irrigation': {
    source: 'Merriam & Keller 1978 via spreval (NCSU, open library), reference pages: AELQ, SMD 4.4 in, 11.5 h',
    known: 'library-test',
    inputs: {
      catch_rate: [[0.23, 0.31, 0.24, 0.24, 0.28, 0.31, 0.27, 0.22, 0.26, 0.31, 0.31, 0.25, 0.2, 0.22, 0.32], 'in/h'],
      head_flow: [4.6, 'gpm'],
      spacing: ['30 x 50', 'ft'],
      SMD: [4.4, 'in'],
      duration: [11.5, 'h'],
    },
    expected: { AELQ: [73.64892, '%'] },
    tolerance: { abs: 0.01 },
    note: 'the driest quarter is not yet full: equal to PELQ',
  },
} satisfies GoldenChecks;
