import type { GoldenChecks } from '../golden-check.js';

export const checks = {
  'et-100': {
    source: 'Monash R package data via pyet tests/test_rpackage.py: FAO-56 PM, Adelaide-type site, 2001-03-01..10',
    known: 'library-test',
    inputs: {
      Tmax: [[28.8, 27.4, 29, 26.3, 32.7, 35.7, 33.8, 33.8, 35.6, 27.5], 'degC'],
      Tmin: [[15.1, 14, 16.3, 16.2, 17.8, 26.7, 20.6, 22.3, 22.7, 17.1], 'degC'],
      RHmax: [[68, 77, 69, 70, 73, 36, 51, 46, 34, 67], '%'],
      RHmin: [[30, 25, 30, 34, 29, 20, 18, 18, 10, 30], '%'],
      Rs: [
        [20.44477761, 20.34991941, 20.25373437, 20.1562439, 20.05747057, 19.95743816, 19.85617161, 19.75369701, 19.65004162, 19.54523386],
        'MJ/m2/d',
      ],
      u10: [[2.65625, 2.78472222, 2.49305556, 3.73611111, 3.30902778, 4.93402778, 2.90972222, 4.48958333, 3.99305556, 4.31597222], 'm/s'],
      latitude: [-0.6095, 'rad'],
      elevation: [48, 'm'],
    },
    expected: { ETo: [[5.1, 5, 5, 5.2, 5.9, 8.8, 6.3, 7.8, 8, 5.7], 'mm/d'] },
    tolerance: { abs: 0.06 },
    note: 'wind measured at 10 m',
  },
} satisfies GoldenChecks;
