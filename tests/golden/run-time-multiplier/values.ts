import type { GoldenChecks } from '../golden-check.js';

export const checks = {
  'ss-040': {
    source: 'Irrigation Association scheduling multiplier: 1/(0.4+0.6*DU_LQ)',
    known: 'memory',
    inputs: { DU_LQ: [1, ''] },
    expected: { RTM: [1, ''] },
    tolerance: { abs: 0.005 },
  },
  'ss-041': {
    source: 'Irrigation Association scheduling multiplier: 1/(0.4+0.6*DU_LQ)',
    known: 'memory',
    inputs: { DU_LQ: [0.9, ''] },
    expected: { RTM: [1.06, ''] },
    tolerance: { abs: 0.005 },
  },
  'ss-043': {
    source: 'Irrigation Association scheduling multiplier: 1/(0.4+0.6*DU_LQ)',
    known: 'memory',
    inputs: { DU_LQ: [0.75, ''] },
    expected: { RTM: [1.18, ''] },
    tolerance: { abs: 0.005 },
  },
  'ss-044': {
    source: 'Irrigation Association scheduling multiplier: 1/(0.4+0.6*DU_LQ)',
    known: 'memory',
    inputs: { DU_LQ: [0.7, ''] },
    expected: { RTM: [1.22, ''] },
    tolerance: { abs: 0.005 },
  },
  'ss-046': {
    source: 'Irrigation Association scheduling multiplier: 1/(0.4+0.6*DU_LQ)',
    known: 'memory',
    inputs: { DU_LQ: [0.6, ''] },
    expected: { RTM: [1.32, ''] },
    tolerance: { abs: 0.005 },
  },
  'ss-047': {
    source: 'Irrigation Association scheduling multiplier: 1/(0.4+0.6*DU_LQ)',
    known: 'memory',
    inputs: { DU_LQ: [0.55, ''] },
    expected: { RTM: [1.37, ''] },
    tolerance: { abs: 0.005 },
  },

  // The rest of the same table.
  'multiplier-at-0.8': {
    source: 'Irrigation Association scheduling multiplier: 1/(0.4+0.6*DU_LQ)',
    known: 'memory',
    inputs: { DU_LQ: [0.8, ''] },
    expected: { RTM: [1.14, ''] },
    tolerance: { abs: 0.005 },
  },
  'multiplier-at-0.65': {
    source: 'Irrigation Association scheduling multiplier: 1/(0.4+0.6*DU_LQ)',
    known: 'memory',
    inputs: { DU_LQ: [0.65, ''] },
    expected: { RTM: [1.27, ''] },
    tolerance: { abs: 0.005 },
  },
  'multiplier-at-0.5': {
    source: 'Irrigation Association scheduling multiplier: 1/(0.4+0.6*DU_LQ)',
    known: 'memory',
    inputs: { DU_LQ: [0.5, ''] },
    expected: { RTM: [1.43, ''] },
    tolerance: { abs: 0.005 },
  },
} satisfies GoldenChecks;
