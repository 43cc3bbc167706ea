import type { GoldenChecks } from '../golden-check.js';

export const checks = {
  'ml-017': {
    source: 'US Navy MO-221 (meters), industry accuracy limits: accuracy limits',
    known: 'text',
    inputs: { flow: ['maximum and intermediate | minimum', ''] },
    expected: { limits: ['98.5-101.5 % | 95-101 %', ''] },
    tolerance: { exact: true },
  },
  'ml-021': {
    source: 'COMAR 20.70.06.03 (Maryland) citing AWWA: displacement meter test flows',
    known: 'text',
    inputs: { meter_size: ['3/4 in', ''] },
    expected: { min_test_flow: [0.5, 'gpm'], max_normal_flow: [30, 'gpm'] },
    tolerance: { exact: true },
  },
  'ml-022': {
    source: 'COMAR 20.70.06.03 (Maryland) citing AWWA: displacement meter test flows',
    known: 'text',
    inputs: { meter_size: ['1 in', ''] },
    expected: { min_test_flow: [0.75, 'gpm'], max_normal_flow: [50, 'gpm'] },
    tolerance: { exact: true },
  },
  'ml-024': {
    source: 'COMAR 20.70.06.03 (Maryland) citing AWWA: displacement meter test flows',
    known: 'text',
    inputs: { meter_size: ['2 in', ''] },
    expected: { min_test_flow: [2, 'gpm'], max_normal_flow: [160, 'gpm'] },
    tolerance: { exact: true },
  },
  'ml-025': {
    source: 'COMAR 20.70.06.03 (Maryland) citing AWWA: displacement meter test flows',
    known: 'text',
    inputs: { meter_size: ['3 in', ''] },
    expected: { min_test_flow: [4, 'gpm'], max_normal_flow: [300, 'gpm'] },
    tolerance: { exact: true },
  },
  'ml-030': {
    source: 'COMAR 20.70.06.04: registration error sign convention',
    known: 'text',
    inputs: { formula: ['100*(meter-standard)/meter', ''] },
    expected: { positive_means: ['fast', ''] },
    tolerance: { exact: true },
  },
  'ml-031': {
    source: 'water-loss literature (IWA): night window and background constants (iwaponline 1068139)',
    known: 'text',
    inputs: { method: ['minimum night flow', ''] },
    expected: {
      window: ['02:00-04:00', ''],
      active_population: [6, '%'],
      mains_background: [40, 'L/km/h'],
      cistern: [10, 'L'],
      pressure_exponent_background: [1.5, ''],
      pressure_exponent_bursts: [0.5, ''],
    },
    tolerance: { exact: true },
  },

  // The rest of the same table.
  'displacement-meter-5-8': {
    source: 'COMAR 20.70.06.03 (Maryland) citing AWWA: displacement meter test flows',
    known: 'text',
    inputs: { meter_size: ['5/8 in', ''] },
    expected: { min_test_flow: [0.25, 'gpm'], max_normal_flow: [20, 'gpm'] },
    tolerance: { exact: true },
  },
  'displacement-meter-1-1-2': {
    source: 'COMAR 20.70.06.03 (Maryland) citing AWWA: displacement meter test flows',
    known: 'text',
    inputs: { meter_size: ['1-1/2 in', ''] },
    expected: { min_test_flow: [1.5, 'gpm'], max_normal_flow: [100, 'gpm'] },
    tolerance: { exact: true },
  },
  'displacement-meter-4': {
    source: 'COMAR 20.70.06.03 (Maryland) citing AWWA: displacement meter test flows',
    known: 'text',
    inputs: { meter_size: ['4 in', ''] },
    expected: { min_test_flow: [7, 'gpm'], max_normal_flow: [500, 'gpm'] },
    tolerance: { exact: true },
  },
  'displacement-meter-6': {
    source: 'COMAR 20.70.06.03 (Maryland) citing AWWA: displacement meter test flows',
    known: 'text',
    inputs: { meter_size: ['6 in', ''] },
    expected: { min_test_flow: [12, 'gpm'], max_normal_flow: [1000, 'gpm'] },
    tolerance: { exact: true },
  },
} satisfies GoldenChecks;
