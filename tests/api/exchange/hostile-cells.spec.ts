import { expect, it } from 'vitest';
import type { FileName } from '../../../apps/api/src/features/exchange/columns/import-files.js';
import { outcome } from './imports-in-memory.js';

// Cells that must be refused by name, never guessed; the rules are this product's import contract.

/** A row of each file that is good, so that a case changes one cell of it. */
const good: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  clients: { client: 'Ash HOA' },
  properties: { property: 'Ash', client: 'Elm HOA' },
  stations: { station: 'S2', latitude: '38', longitude: '-121' },
  meters: { meter: 'M9', property: 'Elm', unit: 'CCF' },
  controllers: { controller: 'C', property: 'Elm', stations: '8' },
  zones: { property: 'Elm', zone: 'Beds', area_sqft: '1000', method: 'drip' },
  plantings: { property: 'Elm', zone: 'Lawn', species: 'Salvia' },
  settings: {
    property: 'Elm',
    controller: 'A',
    effective_at: '2026-05-01',
    program: 'A',
    days: 'daily',
    starts: '05:00',
    station: '1',
    minutes: '10',
  },
  readings: { property: 'Elm', meter: 'M1', read_at: '2026-05-01T08:00', register: '100' },
  usage: { property: 'Elm', meter: 'M1', start: '2026-05-01T08:00', end: '2026-05-01T09:00', volume: '1' },
  bills: { property: 'Elm', meter: 'M1', start: '2026-05-01', end: '2026-06-01', volume: '12' },
  weather: { station: 'S1', date: '2026-05-01' },
  rules: { rule: 'R', water_supplier: 'Town Water' },
  rates: { water_supplier: 'Town Water', effective_from: '2026-01-01', tier: '1', unit: 'CCF', price: '3' },
};

function withCell(file: string, column: string, cell: string): Readonly<Record<string, string>> {
  const row = { ...good[file], [column]: `"${cell.replaceAll('"', '""')}"` };
  return { [`${file}.csv`]: `${Object.keys(row).join(',')}\n${Object.values(row).join(',')}\n` };
}

const refused: readonly (readonly [string, string, string, string])[] = [
  ['zones', 'area_sqft', '1,234', 'THOUSANDS_SEPARATOR'],
  ['zones', 'area_sqft', '12,345.5', 'THOUSANDS_SEPARATOR'],
  ['zones', 'area_sqft', '1.234.567', 'THOUSANDS_SEPARATOR'],
  ['zones', 'area_sqft', '1.234,5', 'THOUSANDS_SEPARATOR'],
  ['zones', 'area_sqft', '1 234', 'THOUSANDS_SEPARATOR'],
  ['zones', 'area_sqft', '1\u00a0234', 'THOUSANDS_SEPARATOR'],
  ['zones', 'area_sqft', '1\u202f234,5', 'THOUSANDS_SEPARATOR'],
  ['zones', 'area_sqft', "1'234", 'THOUSANDS_SEPARATOR'],
  ['zones', 'area_sqft', '12,5', 'DECIMAL_COMMA'],
  ['zones', 'area_sqft', '1234,5', 'DECIMAL_COMMA'],
  ['zones', 'area_sqft', ',5', 'DECIMAL_COMMA'],
  ['zones', 'area_sqft', '1e309', 'NUMBER_NOT_IN_FULL'],
  ['zones', 'area_sqft', '1.2E+05', 'NUMBER_NOT_IN_FULL'],
  ['zones', 'area_sqft', '9'.repeat(400), 'OUT_OF_RANGE'],
  ['zones', 'area_sqft', 'NaN', 'NOT_A_NUMBER'],
  ['zones', 'area_sqft', 'Infinity', 'NOT_A_NUMBER'],
  ['zones', 'area_sqft', '-Infinity', 'NOT_A_NUMBER'],
  ['zones', 'area_sqft', '-0', 'NEGATIVE_ZERO'],
  ['zones', 'mulch_in', '-0.00', 'NEGATIVE_ZERO'],
  ['zones', 'area_sqft', '0x10', 'NOT_A_NUMBER'],
  ['zones', 'area_sqft', '0b11', 'NOT_A_NUMBER'],
  ['zones', 'area_sqft', '1_000', 'NOT_A_NUMBER'],
  ['zones', 'area_sqft', '12 sq ft', 'NOT_A_NUMBER'],
  ['zones', 'area_sqft', '$5', 'NOT_A_NUMBER'],
  ['zones', 'area_sqft', '٥', 'NOT_A_NUMBER'],
  ['zones', 'area_sqft', '.', 'NOT_A_NUMBER'],
  ['zones', 'area_sqft', '=1+1', 'NOT_A_NUMBER'],
  ['zones', 'area_sqft', '0', 'OUT_OF_RANGE'],
  ['zones', 'area_sqft', '-5', 'OUT_OF_RANGE'],
  ['zones', 'area_sqft', '#DIV/0!', 'SPREADSHEET_ERROR'],
  ['zones', 'du_lq', '65', 'OUT_OF_RANGE'],
  ['zones', 'du_lq', '0', 'OUT_OF_RANGE'],
  ['zones', 'leaching_fraction', '1', 'OUT_OF_RANGE'],
  ['zones', 'method', 'sprinkler', 'NOT_ONE_OF'],
  ['zones', 'plants', 'turf', 'NOT_ONE_OF'],
  ['zones', 'sun', 'sunny', 'NOT_ONE_OF'],
  ['zones', 'established_on', '5/1/2026', 'NOT_A_DATE'],
  ['zones', 'established_on', '2026-02-30', 'NOT_A_DATE'],
  ['zones', 'established_on', '2026-13-01', 'NOT_A_DATE'],
  ['zones', 'established_on', '46143', 'NOT_A_DATE'],
  ['zones', 'established_on', '9999-12-31', 'OUT_OF_RANGE'],
  ['zones', 'established_on', '1899-12-31', 'OUT_OF_RANGE'],
  ['zones', 'established_on', '0050-01-01', 'OUT_OF_RANGE'],
  ['clients', 'emails', 'a@b.test,c@d.test', 'NOT_AN_EMAIL'],
  ['clients', 'emails', 'a@b.test nobody', 'NOT_AN_EMAIL'],
  ['clients', 'emails', 'Ann <a@b.test>', 'NOT_AN_EMAIL'],
  ['clients', 'language', 'fr', 'NOT_ONE_OF'],
  ['clients', 'not_to_exceed', '-1', 'OUT_OF_RANGE'],
  ['clients', 'client', 'A\ufeffsh', 'INVISIBLE_CHARACTER'],
  ['properties', 'time_zone', 'PST', 'NOT_A_TIME_ZONE'],
  ['properties', 'time_zone', '-08:00', 'NOT_A_TIME_ZONE'],
  ['properties', 'time_zone', 'America/Nowhere', 'NOT_A_TIME_ZONE'],
  ['properties', 'time_zone', 'Los Angeles', 'NOT_A_TIME_ZONE'],
  ['properties', 'allowance_gal_per_month', '1 2 3', 'NOT_TWELVE_NUMBERS'],
  ['properties', 'allowance_gal_per_month', '1,2,3,4,5,6,7,8,9,10,11,12', 'NOT_A_NUMBER'],
  ['properties', 'allowance_gal_per_month', '1 2 3 4 5 6 7 8 9 10 11 1,200', 'THOUSANDS_SEPARATOR'],
  ['properties', 'allowance_from', 'city', 'NOT_ONE_OF'],
  ['properties', 'notes', 'a\u0001b', 'INVISIBLE_CHARACTER'],
  ['properties', 'notes', 'x'.repeat(5001), 'TEXT_TOO_LONG'],
  ['stations', 'latitude', '91', 'OUT_OF_RANGE'],
  ['stations', 'longitude', '-180.5', 'OUT_OF_RANGE'],
  ['stations', 'latitude', "38°4'N", 'NOT_A_NUMBER'],
  ['meters', 'meter', 'None', 'RESERVED_NAME'],
  ['meters', 'unit', 'gallons', 'NOT_ONE_OF'],
  ['meters', 'digits', '6.5', 'NOT_WHOLE'],
  ['meters', 'multiplier', '0', 'OUT_OF_RANGE'],
  ['controllers', 'stations', '0', 'OUT_OF_RANGE'],
  ['controllers', 'stations', '501', 'OUT_OF_RANGE'],
  ['controllers', 'cycle_soak', 'maybe', 'NOT_ONE_OF'],
  ['settings', 'effective_at', '2026-05-01 5pm', 'NOT_AN_INSTANT'],
  ['settings', 'effective_at', '2026-05-01T25:00', 'NOT_AN_INSTANT'],
  ['settings', 'effective_at', '2026-02-29T05:00', 'NOT_AN_INSTANT'],
  ['settings', 'effective_at', '2026-05-01T05:00+25:00', 'NOT_AN_INSTANT'],
  ['settings', 'effective_at', '2199-05-01', 'OUT_OF_RANGE'],
  ['settings', 'days', 'Mon Mon', 'NOT_DAYS'],
  ['settings', 'days', 'weekdays', 'NOT_DAYS'],
  ['settings', 'days', 'every 0 from 2026-06-01', 'NOT_DAYS'],
  ['settings', 'days', 'every 3 from 2026-06-31', 'NOT_DAYS'],
  ['settings', 'days', 'every 3', 'NOT_DAYS'],
  ['settings', 'starts', '5:00 PM', 'NOT_STARTS'],
  ['settings', 'starts', '05:00 05:00', 'NOT_STARTS'],
  ['settings', 'starts', '24:00', 'NOT_STARTS'],
  ['settings', 'minutes', '1:30', 'NOT_A_NUMBER'],
  ['settings', 'state', 'ON!', 'NOT_ONE_OF'],
  ['readings', 'register', '12,418.6', 'THOUSANDS_SEPARATOR'],
  ['readings', 'register', '-3', 'OUT_OF_RANGE'],
  ['weather', 'tmax_f', '451', 'OUT_OF_RANGE'],
  ['weather', 'rhmax', '105.1', 'OUT_OF_RANGE'],
  ['weather', 'rain_in', 'T', 'NOT_A_NUMBER'],
  ['rules', 'allowed_days', 'every 3 from 2026-06-01', 'NOT_DAYS'],
  ['rules', 'exempt_methods', 'drip, hose', 'NOT_ONE_OF'],
  ['rules', 'blocked_from', '10am', 'NOT_A_LOCAL_TIME'],
  ['rates', 'tier', 'first', 'NOT_A_NUMBER'],
];

it.each(refused.map(([file, column, cell, code]) => [`${file}.csv, ${column}: ${cell.slice(0, 24)}`, code, file, column, cell] as const))(
  '%s is %s',
  async (_, code, file, column, cell) => {
    const found = await outcome(withCell(file, column, cell));
    expect(found.problems.filter((problem) => !problem.includes('BOTH_OR_NEITHER'))).toEqual([`${file}.csv:2:${column} ${code}`]);
    expect(found.values[file as FileName]).toBeUndefined();
  },
);

// Expected SI values by the exact definitions of NIST Special Publication 811 (2008), Appendix B.8:
// 1 in = 25.4 mm, 1 ft = 0.3048 m, 1 US gal = 3.785411784 L, 1 mi = 1609.344 m; 1 psi = 6.894757 kPa (same table).
const understood: readonly (readonly [string, string, string, string, unknown])[] = [
  ['zones', 'area_sqft', '1000', 'areaM2', 92.90304],
  ['zones', 'area_sqft', '.5', 'areaM2', 0.04645152],
  ['zones', 'area_sqft', ' +100. ', 'areaM2', 9.290304],
  ['zones', 'precip_in_per_hr', '0.5', 'precipMmPerH', 12.7],
  ['zones', 'flow_gpm', '10', 'flowLPerMin', 37.85411784],
  ['zones', 'hand_gal_per_week', '100', 'handLPerWeek', 378.5411784],
  ['zones', 'root_depth_in', '12', 'rootDepthMm', 304.8],
  ['zones', 'density', '', 'density', 1],
  ['zones', 'method', 'Rotary  Nozzle', 'method', 'rotary nozzle'],
  ['zones', 'meter', 'NONE', 'meter', 'none'],
  ['properties', 'elevation_ft', '1000', 'elevationM', 304.8],
  ['properties', 'time_zone', 'america/new_york', 'timeZone', 'America/New_York'],
  ['properties', 'time_zone', 'UTC', 'timeZone', 'UTC'],
  [
    'properties',
    'allowance_gal_per_month',
    '0 0  1 10 100 0 0 0 0 0 0 1000',
    'allowanceLitresPerMonth',
    [0, 0, 3.785411784, 37.85411784, 378.5411784, 0, 0, 0, 0, 0, 0, 3785.411784],
  ],
  ['meters', 'pressure_psi', '60', 'pressureKpa', 413.68542],
  ['meters', 'size_in', '1.5', 'sizeMm', 38.1],
  ['meters', 'multiplier', '', 'multiplier', 1],
  ['meters', 'unit', 'ccf', 'unit', 'CCF'],
  ['controllers', 'rain_sensor', 'TRUE', 'rainSensor', true],
  ['clients', 'emails', 'a@b.test  c@d.test', 'emails', ['a@b.test', 'c@d.test']],
  ['settings', 'days', 'fri MON Wednesday', 'days', { kind: 'weekdays', weekdays: ['Mon', 'Wed', 'Fri'] }],
  ['settings', 'days', 'every 3 from 2026-06-01', 'days', { kind: 'every', everyDays: 3, from: '2026-06-01' }],
  ['settings', 'days', 'odd', 'days', { kind: 'odd' }],
  ['settings', 'starts', '5:00 22:30', 'starts', [300, 1350]],
  ['settings', 'starts', 'none', 'starts', []],
  ['settings', 'adjust_percent', '', 'adjustPercent', 100],
  ['settings', 'record', '', 'record', 'found'],
  ['settings', 'effective_at', '2026-05-01T05:00Z', 'effectiveAt', Date.UTC(2026, 4, 1, 5)],
  ['settings', 'effective_at', '2026-05-01 05:00', 'effectiveAt', Date.UTC(2026, 4, 1, 12)],
  ['settings', 'effective_at', '2026-05-01', 'effectiveAt', Date.UTC(2026, 4, 1, 7)],
  ['settings', 'effective_at', '2026-05-01T05:00:30.25-0400', 'effectiveAt', Date.UTC(2026, 4, 1, 9, 0, 30, 250)],
  ['usage', 'end', '2026-05-01T24:00', 'end', Date.UTC(2026, 4, 2, 7)],
  ['usage', 'volume', '1', 'litres', 2831.6846592],
  ['usage', 'unit', 'gal', 'litres', 3.785411784],
  ['bills', 'end_included', 'yes', 'endOn', '2026-06-02'],
  ['bills', 'end_included', '', 'endOn', '2026-06-01'],
  ['bills', 'volume', '2', 'litres', 5663.3693184],
  ['weather', 'tmax_f', '104', 'tmaxC', 40],
  ['weather', 'tmin_f', '-40', 'tminC', -40],
  ['weather', 'wind_mph', '10', 'windMPerS', 4.4704],
  ['weather', 'rain_in', '', 'rainMm', null],
  ['weather', 'rain_in', '0', 'rainMm', 0],
  ['rules', 'allowed_days', 'thu mon', 'allowedDays', 'Mon Thu'],
  ['rules', 'allowed_days', 'None', 'allowedDays', 'none'],
  ['rules', 'exempt_methods', 'drip subsurface drip; hand', 'exemptMethods', 'drip, subsurface drip, hand'],
  ['rules', 'max_minutes', '15', 'maxMinutes', 15],
];

it.each(understood)('%s.csv: %s "%s" is %s %j', async (file, column, cell, field, value) => {
  const found = await outcome(withCell(file, column, cell));
  expect(found.problems).toEqual([]);
  const row = found.values[file as FileName]?.[0] as Readonly<Record<string, unknown>> | undefined;
  if (typeof value === 'number') expect(row?.[field]).toBeCloseTo(value, 9);
  else if (Array.isArray(value) && typeof value[2] === 'number')
    value.forEach((one, at) => expect((row?.[field] as number[])[at]).toBeCloseTo(one, 9));
  else expect(row?.[field]).toEqual(value);
});
