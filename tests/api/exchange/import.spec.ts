import { afterAll, beforeAll, beforeEach, expect, it } from 'vitest';
import { startApp, type TestApp } from '../../support/test-app.js';
import { countsOf, exportOf, type Files, importInto, totalsOf } from './exchange-kit.js';
import { everyColumn } from './every-column.js';

let product: TestApp;
let organization: string;
beforeAll(async () => {
  product = await startApp();
});
afterAll(() => product.close());
beforeEach(async () => {
  organization = await product.organization();
});

// biome-ignore lint/suspicious/noExplicitAny: rows of any table
const rows = (sql: string, ...more: unknown[]): Promise<any[]> => product.database.admin(sql, [organization, ...more]);
const brief = (problem: { file: string; line: number | null; column: string | null; code: string }): string =>
  `${problem.file}:${problem.line}:${problem.column} ${problem.code}`;
const TABLES = [
  'client',
  'weather_station',
  'water_supplier',
  'property',
  'meter',
  'controller',
  'zone',
  'planting',
  'watering_rule',
  'rate_tier',
  'backflow_assembly',
  'settings',
  'rain_pause',
  'reading',
  'usage_day',
  'bill',
  'weather_day',
  'change',
  'background_job',
];

/** How many rows each table holds of an organization, and a fingerprint of all their columns. */
async function stateOf(organizationId: string): Promise<Record<string, string>> {
  const state: Record<string, string> = {};
  for (const table of TABLES) {
    const [row] = await product.database.admin<{ says: string }>(
      `select count(*) || ' ' || coalesce(md5(string_agg(t::text, '|' order by t::text)), '') as says from ${table} t where organization_id = $1`,
      [organizationId],
    );
    state[table] = row!.says;
  }
  return state;
}

it('counts in a look what storing then does, and a look stores nothing', async () => {
  const before = await stateOf(organization);
  const look = await importInto(product, organization, everyColumn, 'none');
  expect(look.written).toBe(false);
  expect(await stateOf(organization)).toEqual(before);
  const stored = await importInto(product, organization, everyColumn);
  expect(stored).toEqual({ ...look, written: true });
  expect(totalsOf(stored)).toEqual({ new: stored.rows, changed: 0, same: 0, wrong: 0 });
});

it('changes nothing when the same rows come again: no version, no record, no computation', async () => {
  await importInto(product, organization, everyColumn);
  const before = await stateOf(organization);
  const again = await importInto(product, organization, everyColumn);
  expect(totalsOf(again)).toEqual({ new: 0, changed: 0, same: again.rows, wrong: 0 });
  expect(await stateOf(organization)).toEqual(before);
});

it('records a changed row with a version, before and after, and asks for its accounts only', async () => {
  await importInto(product, organization, everyColumn);
  await product.drain();
  const report = await importInto(product, organization, { 'zones.csv': everyColumn['zones.csv']!.replace('12560.25', '13000') });
  expect(countsOf(report)).toEqual({ 'zones.csv': '0 1 1 0' });
  const [zone] = await rows(`select id, version, area_m2 from zone where organization_id = $1 and name = 'Lawn 1'`);
  // 13,000 ft² by the international foot of 0.3048 m (NIST SP 811, appendix B.8).
  expect(zone).toMatchObject({ version: 2, area_m2: expect.closeTo(13_000 * 0.3048 ** 2, 9) });
  const [change] = await rows(
    `select deed, way, thing_version, before, after from change where organization_id = $1 and thing_id = $2 and thing_version = 2`,
    zone.id,
  );
  expect(change).toMatchObject({ deed: 'change', way: 'import', thing_version: 2 });
  expect(Object.keys(change.after)).toEqual(['areaM2']);
  const [property] = await rows(`select id from property where organization_id = $1 and name = 'Elm Court'`);
  expect(await rows(`select payload from background_job where organization_id = $1 and state = 'queued'`)).toEqual([
    { payload: { propertyIds: [property.id] } },
  ]);
});

it('leaves what is stored where a file lacks the column', async () => {
  await importInto(product, organization, everyColumn);
  const before = await exportOf(product, organization);
  const narrow: Files = {
    'properties.csv': 'property,client\nElm Court,Elm HOA\n',
    'meters.csv': 'meter,property,unit\nM1,Elm Court,CCF\n',
    'zones.csv': 'property,zone,area_sqft,method\nElm Court,Lawn 1,12560.25,rotor\nElm Court,Pots,100,hand\n',
    'readings.csv': 'meter,property,read_at,register\nM1,Elm Court,2026-05-01T09:12,800.1\n',
    'bills.csv': 'property,meter,start,end,volume,unit\nElm Court,M1,2026-01-01,2026-02-01,204,HCF\n',
    'pauses.csv': 'property,controller,paused_from\nElm Court,A,2026-03-02T16:00\n',
    'weather.csv': 'station,date,rain_in\nRidge,2026-06-01,0.00\n',
  };
  const report = await importInto(product, organization, narrow);
  expect(report.problemsTotal).toBe(0);
  const after = await exportOf(product, organization);
  for (const name of Object.keys(narrow)) expect(after[name], name).toBe(before[name]);
  const changed = await importInto(product, organization, {
    'weather.csv': 'station,date,rain_in\nRidge,2026-06-01,0.5\nRidge,2026-06-03,0\n',
  });
  expect(countsOf(changed)).toEqual({ 'weather.csv': '1 1 0 0' });
  expect((await exportOf(product, organization))['weather.csv']).toContain('Ridge,2026-06-01,95.4,58.1,88,21,49.9,4.5,10,28.31,0.5,0.29');
});

it('stores nothing at all when a row is wrong and all were wished; the good ones when they were', async () => {
  const bad = {
    ...everyColumn,
    'readings.csv': `${everyColumn['readings.csv']}Elm Court,M1,2026-05-31T25:00,12,crew,\nElm Court,M9,2026-05-31T10:00,12,crew,\n`,
  };
  const before = await stateOf(organization);
  const refused = await importInto(product, organization, bad);
  expect(refused).toMatchObject({ written: false, problemsTotal: 2 });
  expect(await stateOf(organization)).toEqual(before);
  const good = await importInto(product, organization, bad, 'good');
  expect(good).toEqual({ ...refused, written: true });
  expect(countsOf(good)['readings.csv']).toBe('4 0 0 2');
  expect(await rows('select from reading where organization_id = $1')).toHaveLength(4);
});

it('refuses a file that breaks off, as a whole, and stores none of the others', async () => {
  const report = await importInto(product, organization, { ...everyColumn, 'bills.csv': `${everyColumn['bills.csv']}"Elm Court,M1,2026` });
  expect(report.written).toBe(false);
  expect(report.files.find(({ name }) => name === 'bills.csv')).toMatchObject({
    status: 'refused',
    new: 0,
    problems: [{ code: 'QUOTE_NOT_CLOSED' }],
  });
  expect(await rows('select from property where organization_id = $1')).toHaveLength(0);
});

it('leaves another organization with the same names untouched', async () => {
  const other = await product.organization();
  await importInto(product, other, everyColumn);
  const before = await stateOf(other);
  await importInto(product, organization, { ...everyColumn, 'zones.csv': everyColumn['zones.csv']!.replace('12560.25', '9') });
  await importInto(product, organization, { 'clients.csv': 'client,units\nElm HOA,us\n' });
  expect(await stateOf(other)).toEqual(before);
  expect(totalsOf(await importInto(product, other, everyColumn)).same).toBe(38);
});

it('lets zones change places, but takes no station from a zone that the file does not name', async () => {
  const zones = (...lines: string[]): Files => ({
    'zones.csv': `property,zone,controller,station,area_sqft,method\n${lines.join('\n')}\n`,
  });
  await importInto(product, organization, everyColumn);
  await importInto(product, organization, zones('Elm Court,West,A,2,100,drip', 'Elm Court,East,A,3,100,drip'));
  const swapped = await importInto(product, organization, zones('Elm Court,West,A,3,100,drip', 'Elm Court,East,A,2,100,drip'));
  expect(countsOf(swapped)).toEqual({ 'zones.csv': '0 2 0 0' });
  const taken = await importInto(
    product,
    organization,
    {
      ...zones('Elm Court,South,A,1,100,drip', 'Elm Court,North,A,4,100,drip'),
      'plantings.csv': 'property,zone,species\nElm Court,South,Salvia\nElm Court,North,Salvia\n',
    },
    'good',
  );
  expect(taken.files.flatMap(({ problems }) => problems).map(brief)).toEqual([
    'zones.csv:2:station STATION_OF_ANOTHER_ZONE',
    'plantings.csv:2:zone NAME_REJECTED',
  ]);
  expect(taken.files[0]!.problems[0]).toMatchObject({ found: '1', expected: 'Lawn 1' });
  expect(await rows(`select name, station from zone where organization_id = $1 and station is not null order by station`)).toEqual([
    { name: 'Lawn 1', station: 1 },
    { name: 'East', station: 2 },
    { name: 'West', station: 3 },
    { name: 'North', station: 4 },
  ]);
});

it('takes a retired thing into use again when a file names it', async () => {
  await importInto(product, organization, everyColumn);
  await product.database.admin(`update property set retired_at = now(), version = 2 where organization_id = $1 and name = '-Minus Park'`, [
    organization,
  ]);
  const report = await importInto(product, organization, { 'properties.csv': everyColumn['properties.csv']! });
  expect(countsOf(report)).toEqual({ 'properties.csv': '0 1 1 0' });
  expect(await rows(`select version, retired_at from property where organization_id = $1 and name = '-Minus Park'`)).toEqual([
    { version: 3, retired_at: null },
  ]);
  expect(await rows(`select deed from change where organization_id = $1 and thing = 'property' and thing_version = 3`)).toEqual([
    { deed: 'restore' },
  ]);
});

it('gives a property its weather station when the station becomes known', async () => {
  const first = await importInto(product, organization, everyColumn);
  const notices = first.files.find(({ name }) => name === 'properties.csv')!.notices;
  expect(notices.map(brief)).toEqual(['properties.csv:4:weather_station STATION_NOT_KNOWN']);
  const linked = () =>
    rows(
      `select s.name from property p left join weather_station s on s.organization_id = p.organization_id and s.id = p.weather_station_id where p.organization_id = $1 and p.name = '-Minus Park'`,
    );
  expect(await linked()).toEqual([{ name: null }]);
  await importInto(product, organization, { 'stations.csv': 'station,latitude,longitude\nFar Station,38,-121\n' });
  expect(await linked()).toEqual([{ name: 'Far Station' }]);
});

it('makes a new reading of a corrected register, and keeps the one before', async () => {
  await importInto(product, organization, everyColumn);
  const report = await importInto(product, organization, {
    'readings.csv': 'property,meter,read_at,register\nElm Court,M1,2026-05-01T09:12,801.1\n',
  });
  expect(countsOf(report)).toEqual({ 'readings.csv': '0 1 0 0' });
  const kept = await rows(
    `select register, note, replaced_by_id is not null as replaced from reading where organization_id = $1 and register in (800.1, 801.1) order by register`,
  );
  expect(kept).toEqual([
    { register: 800.1, note: 'Lid stuck, "hard" to open', replaced: true },
    { register: 801.1, note: 'Lid stuck, "hard" to open', replaced: false },
  ]);
});
