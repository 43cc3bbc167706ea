import type { GoldenChecks } from '../golden-check.js';

export const checks = {
  'ml-001': {
    source: 'unit definitions: CCF, acre-foot, acre-inch',
    known: 'memory',
    inputs: { one: ['1 CCF, 1 acre-ft, 1 acre-in, 1 m3', ''] },
    expected: { CCF: [748.05, 'gal'], acre_ft: [325851, 'gal'], acre_in: [27154, 'gal'], m3: [264.172, 'gal'] },
    tolerance: { rel: 0.0001 },
  },
  'ml-054': {
    source: 'extension circular SCR-23 list of equivalents: unit equivalents',
    known: 'text',
    inputs: { one: ['1 acre-foot | 1 acre-inch | 1 ft3 | 1 gpm', ''] },
    expected: {
      acre_foot: [325851, 'gal'],
      acre_foot_ft3: [43560, 'ft3'],
      acre_inch: [27154, 'gal'],
      ft3: [7.48, 'gal'],
      gpm_in_Ls: [0.06309, 'L/s'],
      gpm_for_1_acre_inch_per_hour: [450, 'gpm'],
    },
    tolerance: { rel: 0.006 },
    note: '450 is a rounded 452.6; the circular misprints 3,360 ft3 for an acre-inch (correct 3,630)',
  },

  // Further equivalents of the same lists.
  'cubic-foot-and-others': {
    source: 'public water suppliers: CCF against kgal; imperial gallon, a trap in Canadian tables',
    known: 'text',
    inputs: { one: ['1 ft3, 1 CCF, 1 kgal, 1 imperial gal', ''] },
    expected: { ft3: [7.4805, 'gal'], CCF_in_kgal: [0.74805, 'kgal'], kgal_in_CCF: [1.3368, 'CCF'], imperial_gal: [4.546, 'L'] },
    tolerance: { rel: 0.0001 },
  },
} satisfies GoldenChecks;

/** Gallons of an inch of water on a square foot: 0.6233, printed to four decimals. */
export const gallonsPerInchSquareFoot = { gallons: 0.6233, tolerance: 0.0001 } as const;
