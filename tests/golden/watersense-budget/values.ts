import type { GoldenChecks } from '../golden-check.js';

export const checks = {
  'ob-029': {
    source: 'EPA WaterSense water budget approach: LWA formula',
    known: 'memory',
    inputs: { ETo_peak_month: [6, 'in'], area: [5000, 'ft2'], factor: [0.7, ''] },
    expected: { LWA: [13089, 'gal/month'] },
    tolerance: { rel: 0.002 },
    note: 'ETo*A*0.6233*0.70; arithmetic from remembered formula',
  },
  'ob-030': {
    source: 'EPA WaterSense water budget approach: LWR_H formula',
    known: 'memory',
    inputs: { ETo: [6, 'in'], KL: [0.7, ''], Ra: [0.3, 'in'], DU_LQ: [0.65, ''], area: [1000, 'ft2'] },
    expected: { RTM: [1.2658, ''], LWR: [3077, 'gal/month'] },
    tolerance: { rel: 0.002 },
    note: 'RTM=1/(0.4+0.6 DU); LWR=RTM*(ETo*KL-Ra)*A*0.6233',
  },
} satisfies GoldenChecks;

const { inputs, expected, tolerance } = checks['ob-030'];

/** Landscape water requirement of a hydrozone: ETo and effective rain [in], area [ft2], printed multiplier and gallons a month. */
export const hydrozone = {
  eto: inputs.ETo[0],
  landscapeCoefficient: inputs.KL[0],
  effectiveRain: inputs.Ra[0],
  uniformity: inputs.DU_LQ[0],
  squareFeet: inputs.area[0],
  multiplier: expected.RTM[0],
  gallons: expected.LWR[0],
  relativeTolerance: tolerance.rel,
} as const;

/** Default distribution uniformity of the low quarter. */
export const defaultUniformities = [
  ['drip', 0.7],
  ['subsurface drip', 0.9],
  ['spray', 0.65],
  ['microspray', 0.7],
  ['rotor', 0.7],
] as const;
