import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';

// An invented property, allowed a whole reference ET, whose timer waters a lawn twice as much as it needs. Every day has 0.24 in of reference ET and no
// rain; the lawn needs 0.24 x 0.8 x 5,000 x 0.6233 / 0.82 = 730 gal a day and gets 60 min x 20 gpm = 1,200 gal.
const ETO_IN = 0.24;
export const PROGRAMMED_BEFORE_GAL_PER_DAY = 1200;
export const NEEDED_GAL_PER_DAY = (ETO_IN * 0.8 * 5000 * 0.6233) / (0.4 + 0.6 * 0.7);

type Cell = string | number;

const csv = (rows: readonly (readonly Cell[])[]): string => `${rows.map((row) => row.join(',')).join('\n')}\n`;

function days(from: string, until: string): string[] {
  const list: string[] = [];
  for (let at = Date.parse(from); at <= Date.parse(until); at += 86_400_000) list.push(new Date(at).toISOString().slice(0, 10));
  return list;
}

const weather = (from: string, until: string): string =>
  csv([['station', 'date', 'eto_in', 'rain_in'], ...days(from, until).map((day) => ['Hilltop', day, ETO_IN, 0])]);
const readings = (rows: readonly [string, number][]): string =>
  csv([
    ['property', 'meter', 'read_at', 'register', 'source'],
    ...rows.map(([at, register]) => ['Plover Green', '1', at, Math.round(register), 'crew']),
  ]);

function write(folder: string, files: Readonly<Record<string, string>>): string[] {
  mkdirSync(folder, { recursive: true });
  return Object.entries(files).map(([name, text]) => {
    const file = path.join(folder, name);
    writeFileSync(file, text);
    return file;
  });
}

const MAY_DAYS = 31;
const START = 100_000;
const AFTER_MAY = START + MAY_DAYS * PROGRAMMED_BEFORE_GAL_PER_DAY;

/** The company as it is on 2 June: all of May on record. Returns the paths of its files. */
export const companyInJune = (folder: string): string[] => write(folder, { ...place(), ...records() });

const place = (): Record<string, string> => ({
  'clients.csv': csv([
    ['client', 'emails'],
    ['Plover Green Owners', 'board@example.test'],
  ]),
  'stations.csv': csv([
    ['station', 'latitude', 'longitude', 'elevation_ft'],
    ['Hilltop', 38.1, -121.2, 250],
  ]),
  'properties.csv': csv([
    ['property', 'client', 'address', 'city', 'latitude', 'longitude', 'time_zone', 'weather_station', 'allowance_from', 'allowance_etaf'],
    ['Plover Green', 'Plover Green Owners', '1 Plover Way', 'Upper Dell', 38.1, -121.2, 'America/Los_Angeles', 'Hilltop', 'ordinance', 1],
  ]),
  'meters.csv': csv([
    ['meter', 'property', 'kind', 'water', 'unit', 'digits', 'price_per_unit'],
    ['1', 'Plover Green', 'irrigation', 'potable', 'gal', 8, 0.006],
  ]),
  'controllers.csv': csv([
    [
      'controller',
      'property',
      'stations',
      'programs',
      'starts_per_program',
      'adjust_scope',
      'adjust_step_percent',
      'max_adjust_percent',
      'location',
    ],
    ['A', 'Plover Green', 12, 4, 4, 'program', 1, 200, 'Behind the pump house'],
  ]),
  'zones.csv': csv([
    [
      'property',
      'zone',
      'controller',
      'station',
      'area_sqft',
      'plants',
      'plant_factor',
      'method',
      'flow_gpm',
      'flow_source',
      'du_lq',
      'soil',
      'sun',
    ],
    ['Plover Green', 'Lawn', 'A', 1, 5000, 'turf cool-season', 0.8, 'spray', 20, 'measured', 0.7, 'loam', 'full'],
  ]),
});

const records = (): Record<string, string> => ({
  'settings.csv': csv([
    ['property', 'controller', 'effective_at', 'record', 'state', 'program', 'days', 'starts', 'adjust_percent', 'station', 'minutes'],
    ['Plover Green', 'A', '2026-03-01T08:00', 'found', 'on', 'A', 'daily', '05:00', 100, 1, 60],
  ]),
  'readings.csv': readings([
    ['2026-05-01T00:00', START],
    ['2026-06-01T00:00', AFTER_MAY],
  ]),
  'weather.csv': weather('2026-01-15', '2026-06-01'),
});

/**
 * What came in by 1 August: the timer changed on 2 June.
 *
 * @param percent what the crew set, of the minutes before
 */
export function julysRecords(folder: string, percent: number): string[] {
  const after = (PROGRAMMED_BEFORE_GAL_PER_DAY * percent) / 100;
  const june = 2 * PROGRAMMED_BEFORE_GAL_PER_DAY + 28 * after;
  return write(folder, {
    'readings.csv': readings([
      ['2026-07-01T00:00', AFTER_MAY + june],
      ['2026-08-01T00:00', AFTER_MAY + june + 31 * after],
    ]),
    'weather.csv': weather('2026-06-02', '2026-07-31'),
  });
}
