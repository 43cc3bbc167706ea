import type { GoldenChecks } from '../golden-check.js';

export const checks = {
  'et-024': {
    source:
      'FAO Irrigation & Drainage Paper 56 (Allen et al. 1998): Ch.4 Example 17 direct Eq.6; woodcrafty/PyETo tests/test_fao.py @79ddd88',
    known: 'library-test',
    inputs: {
      Rn: [14.33, 'MJ/m2/d'],
      G: [0.14, 'MJ/m2/d'],
      T: [30.2, 'degC'],
      u2: [2, 'm/s'],
      es: [4.42, 'kPa'],
      ea: [2.85, 'kPa'],
      slope: [0.246, 'kPa/degC'],
      gamma: [0.0674, 'kPa/degC'],
    },
    expected: { ETo: [5.72, 'mm/d'] },
    tolerance: { ETo: 0.05 },
  },
  'et-027': {
    source: 'FAO Irrigation & Drainage Paper 56 (Allen et al. 1998): Ch.4 Example 18 ETo',
    known: 'text',
    inputs: {
      latitude: [50.8, 'deg'],
      elevation: [100, 'm'],
      day_of_year: [187, 'd'],
      Tmax: [21.5, 'degC'],
      Tmin: [12.3, 'degC'],
      RHmax: [84, '%'],
      RHmin: [63, '%'],
      u2: [2.078, 'm/s'],
      n: [9.25, 'h'],
    },
    expected: { ETo: [3.88, 'mm/d'] },
    tolerance: { ETo: 0.02 },
    note: 'FAO prints 3.9 after rounding',
  },
  'et-028': {
    source:
      "FAO Irrigation & Drainage Paper 56 (Allen et al. 1998): Ch.4 Example 19 hourly, N'Diaye Senegal 14-15 h; hydpy evap_fao56 doctest (stored",
    known: 'library-test',
    inputs: {
      T: [38, 'degC'],
      RH: [52, '%'],
      u2: [3.3, 'm/s'],
      P: [100.1, 'kPa'],
      Rn: [1.7438935356, 'MJ/m2/h'],
      G: [0.1743893532, 'MJ/m2/h'],
    },
    expected: { ETo: [0.627892, 'mm/h'] },
    tolerance: { ETo: 0.002 },
    note: 'FAO-56 prints 0.63 mm/h; daytime G=0.1 Rn; hourly form uses Cn 37',
  },
  'et-030': {
    source: 'FAO Irrigation & Drainage Paper 56 (Allen et al. 1998): Ch.4 Example 20 (Lyon, July, temperature only)',
    known: 'text',
    inputs: {
      latitude: [45.71666666666667, 'deg'],
      elevation: [200, 'm'],
      day_of_year: [196, 'd'],
      Tmax: [26.6, 'degC'],
      Tmin: [14.8, 'degC'],
      u2_assumed: [2, 'm/s'],
    },
    expected: { ea_from_Tmin: [1.68, 'kPa'], Rs_from_temp: [22.29, 'MJ/m2/d'], Rn: [13.48, 'MJ/m2/d'], ETo: [4.56, 'mm/d'] },
    tolerance: { ea_from_Tmin: 0.01, Rs_from_temp: 0.1, Rn: 0.1, ETo: 0.02 },
  },
  'et-031': {
    source: 'FAO Irrigation & Drainage Paper 56 (Allen et al. 1998): Ch.4 Example 20 wind sensitivity',
    known: 'text',
    inputs: { latitude: [45.72, 'deg'], elevation: [200, 'm'], day_of_year: [196, 'd'], Tmax: [26.6, 'degC'], Tmin: [14.8, 'degC'] },
    expected: { ETo_u2_1: [4.2, 'mm/d'], ETo_u2_3: [4.8, 'mm/d'], reduction_at_1: [0.07, 'fraction'], increase_at_3: [0.06, 'fraction'] },
    tolerance: { ETo_u2_1: 0.1, ETo_u2_3: 0.1, reduction_at_1: 0.02, increase_at_3: 0.02 },
  },
  'et-033': {
    source: 'Mehta (2006) worked example, quoted in woodcrafty/PyETo tests/test_fao.py @79ddd88: Hargreaves-Samani',
    known: 'library-test',
    inputs: { Tmin: [28, 'degC'], Tmax: [38, 'degC'], Tmean: [35, 'degC'], Ra: [38.93715, 'MJ/m2/d'] },
    expected: { ETo: [6.1, 'mm/d'] },
    tolerance: { ETo: 0.05 },
    note: 'uses the stated Tmean 35, not (Tmax+Tmin)/2',
  },
} satisfies GoldenChecks;
