import type { GoldenChecks } from '../golden-check.js';

export const checks = {
  'od-001': {
    source: 'NAESB ESPI schema enumerations as generated in vladistan/greenbutton_objects espi.py @0724a47: CommodityKind',
    known: 'text',
    inputs: { codes: ['1|7|9|11|14', ''] },
    expected: { meaning: ['electricity secondary metered|natural gas|drinkable water|waste water|reclaimed water (irrigation)', ''] },
    tolerance: { exact: true },
  },
  'od-003': {
    source: 'NAESB ESPI schema enumerations as generated in vladistan/greenbutton_objects espi.py @0724a47: UnitSymbolKind flow rates',
    known: 'text',
    inputs: { codes: ['125|129|137|82', ''] },
    expected: { meaning: ['m3/h|US gal/h|L/h|L/s', ''] },
    tolerance: { exact: true },
  },
  'od-004': {
    source: 'NAESB ESPI schema enumerations as generated in vladistan/greenbutton_objects espi.py @0724a47: MeasurementKind',
    known: 'text',
    inputs: { codes: ['58|155', ''] },
    expected: { meaning: ['volume (fluid)|volumetric flow', ''] },
    tolerance: { exact: true },
  },
  'od-006': {
    source:
      'NAESB ESPI schema enumerations as generated in vladistan/greenbutton_objects espi.py @0724a47: AccumulationBehaviour / flow direction / quality',
    known: 'text',
    inputs: { codes: ['accumulation 4|accumulation 1|quality 8|quality 9|quality 10', ''] },
    expected: { meaning: ['delta over interval|bulk (register)|estimated from history|linear interpolation|failed a check', ''] },
    tolerance: { exact: true },
  },
  'od-007': {
    source: 'OpenESPI-Common-java test_usage_data_01.xml: interval start epoch',
    known: 'text',
    inputs: { start: [1330578000, ''], duration: [900, 's'], value: [282, ''] },
    expected: { utc: ['2012-03-01T05:00:00Z', ''] },
    tolerance: { exact: true },
  },
  'od-009': {
    source: 'Daymet single-pixel CSV (spatialEco, FedData docs): columns and units',
    known: 'text',
    inputs: { file: ['Daymet single pixel', ''] },
    expected: { columns: ['year,yday,dayl (s),prcp (mm/day),srad (W/m^2),swe (kg/m^2),tmax (deg c),tmin (deg c),vp (Pa)', ''] },
    tolerance: { exact: true },
  },
  'od-010': {
    source: 'Daymet documentation: daily radiation total',
    known: 'memory',
    inputs: { srad: [350, 'W/m2'], dayl: [50000, 's'] },
    expected: { Rs: [17.5, 'MJ/m2/d'] },
    tolerance: { abs: 0.000001 },
    note: 'formula read (srad*dayl/1e6); arithmetic',
  },
  'od-012': {
    source: 'CIMIS hourly CSV (cleancimis R/cc_stndrze_csv.R): 24 columns',
    known: 'text',
    inputs: { file: ['CIMIS hourly, metric', ''] },
    expected: { n_columns: [24, ''], flags_treated_missing: ['I,M,S,R,Y', ''] },
    tolerance: { exact: true },
  },
} satisfies GoldenChecks;
