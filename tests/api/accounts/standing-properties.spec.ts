import { afterAll, beforeAll, expect, it } from 'vitest';
import {
  aController,
  aMeter,
  aPlanting,
  aProperty,
  aRateTier,
  aReading,
  aWaterSupplier,
  aWateringRule,
  aWeatherDay,
  aWeatherStation,
  aZone,
  type Built,
  insertRow,
  someSettings,
} from '../../support/builders.js';
import { type Somebody, type TestApp, startApp } from '../../support/test-app.js';

const FIRST = Date.parse('2026-03-01');
const DAYS = 157;
const DAY_MS = 86_400_000;
const dateOf = (at: number): string => new Date(at).toISOString().slice(0, 10);

let product: TestApp;
let office: Somebody;
let organizationId: string;
let properties: Built[];
let station: Built;
let supplier: Built;

const admin = (sql: string, values: readonly unknown[] = [organizationId]) =>
  product.database.admin<Record<string, unknown>>(sql, [...values]);

async function recompute(propertyId: string | null = null): Promise<string> {
  const asked = await office.send('mutation($id: ID) { recomputeAccounts(propertyId: $id) { id } }', { id: propertyId });
  expect(asked.errors).toEqual([]);
  await product.drain();
  const { data } = await office.send('query($id: ID!) { job(id: $id) { state says } }', { id: asked.data.recomputeAccounts.id });
  expect(data.job.state).toBe('done');
  return data.job.says as string;
}

/** Accounts that are computed from now on are those whose property is: each says that it was computed from something else. */
const unsettle = () => admin(`update month_account set inputs_version = '' where organization_id = $1`);

/** The properties of which accounts were computed since `unsettle`, by their place; leaves everything settled. */
async function computed(): Promise<number[]> {
  await recompute();
  const rows = await admin(
    `select property_id, bool_and(inputs_version <> '') as all, bool_or(inputs_version <> '') as some from month_account where organization_id = $1 group by 1`,
  );
  expect(rows.every((row) => row['all'] === row['some'])).toBe(true);
  const places = rows.flatMap((row) => (row['some'] ? [properties.findIndex(({ id }) => id === row['property_id'])] : []));
  await unsettle();
  return places.sort();
}

async function aWateredProperty(name: string): Promise<Built> {
  const property = await aProperty(product.database, organizationId, {
    name,
    weather_station_id: station.id,
    water_supplier_id: supplier.id,
  });
  const controller = await aController(product.database, property);
  const meter = await aMeter(product.database, property, { unit: 'L', digits: 9 });
  const zone = await aZone(product.database, property, {
    ...{ controller_id: controller.id, station: 1, flow_l_per_min: 40, flow_source: 'measured' },
  });
  await aPlanting(product.database, zone, { species: 'A grass' });
  await someSettings(product.database, controller, {
    effective_at: '2026-06-02T09:00:00-07:00',
    programs: JSON.stringify([
      {
        name: 'A',
        days: 'daily',
        starts: ['04:00'],
        adjustPercent: 100,
        stations: [{ station: 1, minutes: 20, cycles: 2, soakMinutes: 30 }],
      },
    ]),
  });
  for (let at = 0; at < 7; at += 1)
    await aReading(product.database, meter, {
      ...{ read_at: `${dateOf(Date.parse('2026-06-02') + 10 * at * DAY_MS)}T19:00:00Z`, register: 1000 + at * 90_000 },
    });
  return property;
}

beforeAll(async () => {
  product = await startApp();
  organizationId = await product.organization();
  await admin(`update organization set stands_still_on = '2026-08-05', least_litres = 500, least_money = 0 where id = $1`);
  office = await product.somebody(organizationId, 'office');
  supplier = await aWaterSupplier(product.database, organizationId);
  station = await aWeatherStation(product.database, organizationId);
  for (let day = 0; day < DAYS; day += 1)
    await aWeatherDay(product.database, station, {
      ...{ day: dateOf(FIRST + day * DAY_MS), tmax_c: null, tmin_c: null, given_eto_mm: 6, rain_mm: 0 },
    });
  properties = [await aWateredProperty('Row 0'), await aWateredProperty('Row 1')];
  await recompute();
  await unsettle();
}, 120_000);
afterAll(() => product.close());

/** The rows of a table that stand under the first property, `$2`. */
const under = (owner: string): string => `${owner}_id in (select id from ${owner} where property_id = $2)`;
const ROWS: Readonly<Record<string, string>> = {
  property: 'id = $2',
  planting: under('zone'),
  settings: under('controller'),
  reading: under('meter'),
};
const idIn = (table: string): Promise<string> =>
  admin(`select id from ${table} where organization_id = $1 and property_id = $2`, [organizationId, properties[0]!.id]).then(
    ([row]) => row!['id'] as string,
  );
const change = (table: string, set: string) => () =>
  admin(`update ${table} set ${set} where organization_id = $1 and ${ROWS[table] ?? 'property_id = $2'}`, [
    organizationId,
    properties[0]!.id,
  ]);

const OF_ONE: Readonly<Record<string, () => Promise<unknown>>> = {
  property: change('property', `address = '12 Low Road'`),
  zone: change('zone', 'area_m2 = area_m2 + 1'),
  planting: change('planting', 'cover_percent = 40'),
  controller: change('controller', 'rain_sensor = true'),
  settings: change('settings', `record = 'left'`),
  rain_pause: async () =>
    insertRow(product.database, 'rain_pause', {
      ...{ organization_id: organizationId, controller_id: await idIn('controller') },
      ...{ paused_from: '2026-07-02T00:00:00Z', paused_until: '2026-07-03T00:00:00Z' },
    }),
  meter: change('meter', 'price_per_unit = 0.01'),
  reading: change('reading', 'register = register + 1'),
  usage_day: async () =>
    admin(
      `insert into usage_day (organization_id, meter_id, day, day_start, start_seconds, length_seconds, volumes, unit, total_l)
        values ($1, $2, '2026-07-30', '2026-07-30T07:00:00Z', '{0}', '{86400}', '{5}', 'L', 5)`,
      [organizationId, await idIn('meter')],
    ),
  bill: async () =>
    insertRow(product.database, 'bill', {
      ...{ organization_id: organizationId, meter_id: await idIn('meter'), unit: 'L', volume: 4, litres: 4 },
      ...{ start_on: '2026-03-01', end_on: '2026-03-31' },
    }),
};

const OF_ALL: Readonly<Record<string, () => Promise<unknown>>> = {
  weather_station: () => admin('update weather_station set elevation_m = 7 where organization_id = $1'),
  weather_day: () => admin(`update weather_day set given_eto_mm = 5 where organization_id = $1 and day = '2026-07-04'`),
  water_supplier: () => admin(`update water_supplier set name = 'Another' where organization_id = $1`),
  rate_tier: () => aRateTier(product.database, supplier),
  watering_rule: () => aWateringRule(product.database, supplier),
  'what is told': () => admin('update organization set least_litres = 600 where id = $1'),
  'the day': () => admin(`update organization set stands_still_on = '2026-08-06' where id = $1`),
};

it('leaves properties alone of which nothing has changed', async () => {
  expect(await computed()).toEqual([]);
  expect(await recompute()).toBe('2 properties, 0 months computed');
});

it.each(Object.entries(OF_ONE))('computes a property whose %s has changed, and no other', async (_, changed) => {
  await changed();
  expect(await computed()).toEqual([0]);
  expect(await computed()).toEqual([]);
});

it.each(Object.entries(OF_ALL))('computes all when %s has changed', async (_, changed) => {
  await changed();
  expect(await computed()).toEqual([0, 1]);
  expect(await computed()).toEqual([]);
});

it('computes who is named, whatever has changed, and then once with all', async () => {
  expect(await recompute(properties[1]!.id)).toMatch(/^1 property, [1-9]\d* months computed$/);
  await unsettle();
  expect(await computed()).toEqual([1]);
  expect(await computed()).toEqual([]);
});

it('computes a property again when somebody decided on what was found of it', async () => {
  const [finding] = await admin(
    `select id, version from finding where organization_id = $1 and property_id = $2 and state = 'open' order by id limit 1`,
    [organizationId, properties[1]!.id],
  );
  expect(finding).toBeDefined();
  const { errors } = await office.send(
    'mutation($id: ID!, $version: Int!) { resolveFinding(id: $id, version: $version, with: "mended") { __typename } }',
    {
      id: finding!['id'],
      version: finding!['version'],
    },
  );
  expect(errors).toEqual([]);
  expect(await computed()).toEqual([1]);
  expect(await computed()).toEqual([]);
});
