import type { GoldenChecks } from '../golden-check.js';

export const checks = {
  'dr-001': {
    source: 'Pleasanton CA water shortage stages: stage 1',
    known: 'text',
    inputs: { hours_since_measurable_rain: [[24, 47, 49], 'h'] },
    expected: { potable_irrigation_allowed: ['no | no | yes', ''] },
    tolerance: { exact: true },
  },
  'dr-003': {
    source: 'Woodland CA stage two: days',
    known: 'text',
    inputs: { stage: [2, ''] },
    expected: { max_days_per_week: [3, ''] },
    tolerance: { exact: true },
  },
  'dr-004': {
    source: 'Lago Vista TX stage 1: address parity and hours',
    known: 'text',
    inputs: { address: ['odd | even | commercial', ''] },
    expected: { days: ['Wed+Sat | Thu+Sun | Tue+Fri', ''], hours: ['00:00-10:00 and 19:00-24:00', ''] },
    tolerance: { exact: true },
  },
  'dr-006': {
    source: 'public ordinance text (generic waste rule): hours, minutes, leak repair',
    known: 'text',
    inputs: { rule: ['potable watering', ''] },
    expected: {
      prohibited_hours: ['08:00-17:00', ''],
      max_minutes_per_station: [15, ''],
      leak_repair_days: [5, ''],
    },
    tolerance: { exact: true },
    leftOut: { leak_repair_days: 'a rule about repairs, not about settings' },
  },
  'dr-007': {
    source: 'Wake Village TX stage 1: parity',
    known: 'text',
    inputs: { address_last_digit: ['even | odd', ''] },
    expected: { days: ['Sun+Thu | Sat+Wed', ''], hours: ['00:00-10:00 and 20:00-24:00', ''] },
    tolerance: { exact: true },
  },
} satisfies GoldenChecks;
