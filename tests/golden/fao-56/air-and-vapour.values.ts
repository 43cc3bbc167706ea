import type { GoldenChecks } from '../golden-check.js';

export const checks = {
  'et-001': {
    source: 'FAO Irrigation & Drainage Paper 56 (Allen et al. 1998): Ch.3 Example 2, Eq.7-8; woodcrafty/PyETo tests/test_fao.py @79ddd88',
    known: 'library-test',
    inputs: { elevation: [1800, 'm'] },
    expected: { P: [81.8, 'kPa'], gamma: [0.054, 'kPa/degC'] },
    tolerance: { P: 0.05, gamma: 0.0005 },
  },
  'et-003': {
    source: 'FAO Irrigation & Drainage Paper 56 (Allen et al. 1998): Ch.3 Example 3, Eq.11-12',
    known: 'text',
    inputs: { Tmax: [24.5, 'degC'], Tmin: [15, 'degC'] },
    expected: { e0_Tmax: [3.075, 'kPa'], e0_Tmin: [1.705, 'kPa'], es: [2.39, 'kPa'] },
    tolerance: { abs: 0.005 },
  },
  'et-004': {
    source: 'FAO Irrigation & Drainage Paper 56 (Allen et al. 1998): Ch.3 Example 4, Eq.15; woodcrafty/PyETo tests/test_fao.py @79ddd88',
    known: 'library-test',
    inputs: { Tdry: [25.6, 'degC'], Twet: [19.5, 'degC'], e0_Twet: [2.267, 'kPa'], P: [87.9, 'kPa'], a_psy: [0.000662, '1/degC'] },
    expected: { ea: [1.91, 'kPa'] },
    tolerance: { ea: 0.005 },
    note: 'ventilated (Asmann) psychrometer; a_psy 0.000800 naturally ventilated, 0.001200 indoor',
  },
  'et-006': {
    source:
      'FAO Irrigation & Drainage Paper 56 (Allen et al. 1998): Ch.3 Example 5, Eq.19 (RHmean); pyet-org/pyet tests/testfao56.py @2e857fe',
    known: 'library-test',
    inputs: { Tmax: [25, 'degC'], Tmin: [18, 'degC'], RHmean: [68, '%'] },
    expected: { ea: [1.78, 'kPa'] },
    tolerance: { ea: 0.005 },
  },
  'et-007': {
    source:
      'FAO Irrigation & Drainage Paper 56 (Allen et al. 1998): Ch.3 Example 5, Eq.18 (RHmax only); woodcrafty/PyETo tests/test_fao.py @79ddd88',
    known: 'library-test',
    inputs: { e0_Tmin: [2.064, 'kPa'], RHmax: [82, '%'] },
    expected: { ea: [1.69, 'kPa'] },
    tolerance: { ea: 0.005 },
  },
  'et-015': {
    source: 'FAO Irrigation & Drainage Paper 56 (Allen et al. 1998): Ch.3 Example 14, Eq.47; woodcrafty/PyETo tests/test_fao.py @79ddd88',
    known: 'library-test',
    inputs: { u_z: [3.2, 'm/s'], z: [10, 'm'] },
    expected: { u2: [2.4, 'm/s'] },
    tolerance: { u2: 0.05 },
  },
  'et-021': {
    source: 'FAO Irrigation & Drainage Paper 56 (Allen et al. 1998): Ch.4 Example 17 (Bangkok, April) derived parameters',
    known: 'text',
    inputs: {
      latitude: [13.733333333333333, 'deg'],
      elevation: [2, 'm'],
      day_of_year: [105, 'd'],
      Tmax: [34.8, 'degC'],
      Tmin: [25.6, 'degC'],
      ea: [2.85, 'kPa'],
    },
    expected: {
      Tmean: [30.2, 'degC'],
      slope: [0.246, 'kPa/degC'],
      P: [101.3, 'kPa'],
      gamma: [0.0674, 'kPa/degC'],
      e0_Tmax: [5.56, 'kPa'],
      e0_Tmin: [3.28, 'kPa'],
      es: [4.42, 'kPa'],
      vpd: [1.57, 'kPa'],
    },
    tolerance: { slope: 0.001, P: 0.05, gamma: 0.0001, default_abs: 0.01 },
  },
  'et-025': {
    source: 'FAO Irrigation & Drainage Paper 56 (Allen et al. 1998): Ch.4 Example 18 (Uccle, 6 July) humidity, wind',
    known: 'text',
    inputs: { Tmax: [21.5, 'degC'], Tmin: [12.3, 'degC'], RHmax: [84, '%'], RHmin: [63, '%'], u10: [10, 'km/h'] },
    expected: {
      u10_ms: [2.78, 'm/s'],
      u2: [2.078, 'm/s'],
      e0_Tmax: [2.564, 'kPa'],
      e0_Tmin: [1.431, 'kPa'],
      es: [1.997, 'kPa'],
      ea: [1.409, 'kPa'],
    },
    tolerance: { u10_ms: 0.01, default_abs: 0.001 },
  },
  'et-034': {
    source: 'FAO Irrigation & Drainage Paper 56 (Allen et al. 1998): Annex 2 Table 2.4',
    known: 'text',
    inputs: { T: [30, 'degC'] },
    expected: { slope: [0.243, 'kPa/degC'] },
    tolerance: { slope: 0.001 },
  },
} satisfies GoldenChecks;
