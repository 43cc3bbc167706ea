import { afterAll, beforeAll, expect, it } from 'vitest';
import type { ImportReport } from '../../../apps/api/src/features/exchange/import/import-report.js';
import { startApp, type TestApp } from '../../support/test-app.js';
import { exportOf, importInto } from '../exchange/exchange-kit.js';

/** Every number of a zone, a property, a meter and a controller at both ends of what an import takes. */
const ENDS: Record<'property' | 'meter' | 'controller' | 'zone', Record<string, readonly [number | string, number | string]>> = {
  property: {
    latitude: [-90, 90],
    longitude: [-180, 180],
    elevation_ft: [-1500, 30_000],
    allowance_etaf: [1e-6, 1],
    special_landscape_area_sqft: [0, 1e9],
  },
  meter: {
    multiplier: [1e-6, 1e6],
    digits: [1, 12],
    resolution: [1e-6, 1e6],
    size_in: [1e-3, 60],
    max_gpm: [1e-3, 100_000],
    pressure_psi: [0, 500],
    indoor_gal_per_day: [0, 1e7],
    price_per_unit: [0, 1e8],
  },
  controller: {
    max_minutes: [1e-3, 1440],
    minute_step: [1e-3, 60],
    adjust_step_percent: [1e-3, 100],
    max_adjust_percent: [0, 1000],
    monthly_adjust_percent: [Array(12).fill(0).join(' '), Array(12).fill(1000).join(' ')],
    runs_at_once: [1, 100],
    rain_sensor_in: [0, 10],
  },
  zone: {
    area_sqft: [1e-3, 1e8],
    plant_factor: [0, 1.5],
    precip_in_per_hr: [1e-3, 50],
    flow_gpm: [1e-3, 10_000],
    hand_gal_per_week: [0, 1e7],
    du_lq: [1e-6, 1],
    slope_percent: [0, 300],
    density: [1e-6, 1.5],
    root_depth_in: [1e-3, 118],
    mulch_in: [0, 40],
    leaching_fraction: [0, 0.999],
  },
};
/** What the next larger number of a column would be, refused by name: the gate and the library agree on where it ends. */
const BEYOND = { plant_factor: 1.6, density: 1.6, root_depth_in: 119, allowance_etaf: 1.2 };

const csv = (rows: readonly Record<string, number | string>[]): string => {
  const heads = [...new Set(rows.flatMap((row) => Object.keys(row)))];
  return `${[heads, ...rows.map((row) => heads.map((head) => row[head] ?? ''))].map((cells) => cells.join(',')).join('\n')}\n`;
};

/** Properties of one zone, each with one number of its own. */
function filesOf(cases: readonly { of: string; column: string; value: number | string }[]): Record<string, string> {
  const named = cases.map((one, at) => ({ ...one, property: `Place ${at}` }));
  const own = ({ of, column, value }: (typeof named)[number], kind: string) => (of === kind ? { [column]: value } : {});
  const days = Array.from({ length: 40 }, (_, at) => new Date(Date.UTC(2026, 5, 1 + at)).toISOString().slice(0, 10));
  return {
    'clients.csv': 'client\nOne\n',
    'stations.csv': 'station,latitude,longitude,elevation_ft\nHill,38,-121,100\n',
    'weather.csv': csv(days.map((date) => ({ station: 'Hill', date, eto_in: 0.25, rain_in: 0 }))),
    'properties.csv': csv(
      named.map((one) => ({
        ...{ property: one.property, client: 'One', latitude: 38, longitude: -121, weather_station: 'Hill', allowance_from: 'ordinance' },
        ...own(one, 'property'),
      })),
    ),
    'meters.csv': csv(named.map((one) => ({ meter: 'M', property: one.property, kind: 'mixed', unit: 'CCF', ...own(one, 'meter') }))),
    'readings.csv': csv(
      named.flatMap(({ property }) => [
        { property, meter: 'M', read_at: '2026-06-01T08:00', register: 1 },
        { property, meter: 'M', read_at: '2026-07-01T08:00', register: 9 },
      ]),
    ),
    'controllers.csv': csv(named.map((one) => ({ controller: 'A', property: one.property, stations: 2, ...own(one, 'controller') }))),
    'zones.csv': csv(
      named.map((one) => ({
        ...{ property: one.property, zone: 'Z', controller: 'A', station: 1, area_sqft: 1000, method: 'spray', flow_gpm: 10 },
        ...(one.column === 'hand_gal_per_week' && { controller: '', station: '', method: 'hand' }),
        ...own(one, 'zone'),
      })),
    ),
    'settings.csv': csv(
      named
        .filter(({ column }) => column !== 'hand_gal_per_week')
        .map(({ property }) => ({
          ...{ property, controller: 'A', effective_at: '2026-06-01T00:00', state: 'on', program: 'A', days: 'daily', starts: '04:00' },
          ...{ station: 1, minutes: 1 },
        })),
    ),
  };
}

const problemsOf = (report: ImportReport) => report.files.flatMap(({ problems }) => problems);

let product: TestApp;
beforeAll(async () => {
  product = await startApp();
});
afterAll(() => product.close());

it('whatever number an import takes, the accounts of its property are computed', async () => {
  const organizationId = await product.organization();
  await product.database.admin(`update organization set stands_still_on = '2026-07-05' where id = $1`, [organizationId]);
  const cases = Object.entries(ENDS).flatMap(([of, columns]) =>
    Object.entries(columns).flatMap(([column, ends]) => ends.map((value) => ({ of, column, value }))),
  );
  const report = await importInto(product, organizationId, filesOf(cases));
  expect(problemsOf(report)).toEqual([]);
  await product.drain();
  const { 'accounts.csv': accounts } = await exportOf(product, organizationId);
  const computed = new Set(
    accounts!
      .split('\n')
      .filter((line) => line.includes('2026-06'))
      .map((line) => line.split(',')[0]),
  );
  expect(cases.filter((_, at) => !computed.has(`Place ${at}`))).toEqual([]);
});

it('a number that no account could be computed from is refused in its row, and the other rows are taken', async () => {
  const organizationId = await product.organization();
  const cases = Object.entries(BEYOND).map(([column, value]) => ({ of: column === 'allowance_etaf' ? 'property' : 'zone', column, value }));
  const report = await importInto(product, organizationId, filesOf([...cases, { of: 'zone', column: 'density', value: 1 }]), 'good');
  for (const { column, value } of cases)
    expect(problemsOf(report).find((problem) => problem.column === column)).toMatchObject({ code: 'OUT_OF_RANGE', found: String(value) });
  expect(await product.database.admin('select 1 from zone where organization_id = $1', [organizationId])).toHaveLength(1);
});

it('a property on record whose numbers the library refuses is named, and keeps no other from its accounts', async () => {
  const organizationId = await product.organization();
  await product.database.admin(`update organization set stands_still_on = '2026-07-05' where id = $1`, [organizationId]);
  const cases = [1, 1.1, 1.2].map((value) => ({ of: 'zone', column: 'density', value }));
  await importInto(product, organizationId, filesOf(cases));
  // An older gate let it through.
  await product.database.admin(
    `update zone set density = 1.9 where property_id = (select id from property where organization_id = $1 and name = 'Place 1')`,
    [organizationId],
  );
  await product.drain();
  const jobs = await product.database.admin<{ state: string; says: string }>(
    `select state, says from background_job where organization_id = $1 and kind = 'compute accounts'`,
    [organizationId],
  );
  expect(jobs).toEqual([
    {
      state: 'failed',
      says: 'No account could be computed of Place 1 (DENSITY_FACTOR_OUT_OF_DOMAIN {"densityFactor":1.9}). Correct the value and compute again; the accounts of 2 others are up to date.',
    },
  ]);
  const { 'accounts.csv': accounts } = await exportOf(product, organizationId);
  expect(
    [
      ...new Set(
        accounts!
          .trim()
          .split('\n')
          .slice(1)
          .map((line) => line.split(',')[0]),
      ),
    ].sort(),
  ).toEqual(['Place 0', 'Place 2']);
});
