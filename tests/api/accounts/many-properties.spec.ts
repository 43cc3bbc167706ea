import { afterAll, beforeAll, expect, it } from 'vitest';
import {
  aController,
  aMeter,
  aProperty,
  aReading,
  aWeatherDay,
  aWeatherStation,
  aZone,
  type Built,
  someSettings,
} from '../../support/builders.js';
import { type Somebody, type TestApp, startApp } from '../../support/test-app.js';

const PROPERTIES = 7;
const FIRST = Date.parse('2026-03-01');
const LAST = Date.parse('2026-08-04');
const DAY_MS = 86_400_000;
const dateOf = (at: number): string => new Date(at).toISOString().slice(0, 10);

let product: TestApp;
let office: Somebody;
let organizationId: string;
let properties: Built[];
let stations: Built[];

const recompute = async (propertyId: string | null): Promise<string> => {
  const asked = await office.send('mutation($id: ID) { recomputeAccounts(propertyId: $id) { id } }', { id: propertyId });
  expect(asked.errors).toEqual([]);
  await product.drain();
  const { data } = await office.send('query($id: ID!) { job(id: $id) { state says } }', { id: asked.data.recomputeAccounts.id });
  expect(data.job.state).toBe('done');
  return data.job.says as string;
};
const accounts = (columns: string) =>
  product.database.admin<Record<string, unknown>>(
    `select ${columns} from month_account where organization_id = $1 order by property_id, month, meter_id`,
    [organizationId],
  );
const findings = () =>
  product.database.admin<Record<string, unknown>>('select * from finding where organization_id = $1 order by property_id, cause_key', [
    organizationId,
  ]);
const KEPT = 'id, computed_at, inputs_version, detail';
const NUMBERS = 'property_id, month, needed_l, needed_sd_l, programmed_l, metered_l, above_need_l, detail';

/** A property whose meter is read every ten days; each waters and passes more than the one before. */
async function aWateredProperty(nth: number): Promise<Built> {
  const { database } = product;
  const property = await aProperty(database, organizationId, { name: `Row ${nth}`, weather_station_id: stations[nth % 2]!.id });
  const controller = await aController(database, property);
  const meter = await aMeter(database, property, { unit: 'L', digits: 9 });
  await aZone(database, property, { controller_id: controller.id, station: 1, flow_l_per_min: 40, flow_source: 'measured' });
  const stationsRun = [{ station: 1, minutes: 20 + 10 * nth, cycles: 2, soakMinutes: 30 }];
  await someSettings(database, controller, {
    effective_at: '2026-06-02T09:00:00-07:00',
    programs: JSON.stringify([{ name: 'A', days: 'daily', starts: ['04:00'], adjustPercent: 100, stations: stationsRun }]),
  });
  for (let at = 0; at < 7; at += 1)
    await aReading(database, meter, {
      read_at: `${dateOf(Date.parse('2026-06-02') + 10 * at * DAY_MS)}T19:00:00Z`,
      register: 1000 + at * (12_000 + 6000 * nth),
    });
  return property;
}

beforeAll(async () => {
  product = await startApp();
  organizationId = await product.organization();
  await product.database.admin(
    `update organization set stands_still_on = '2026-08-05', least_litres = 500, least_money = 0 where id = $1`,
    [organizationId],
  );
  office = await product.somebody(organizationId, 'office');
  stations = [
    await aWeatherStation(product.database, organizationId, { name: 'Low' }),
    await aWeatherStation(product.database, organizationId, { name: 'High', latitude: 39.5 }),
  ];
  for (let at = FIRST; at <= LAST; at += DAY_MS)
    for (const [nth, station] of stations.entries()) {
      const rain = (at / DAY_MS) % 9 === 0 && at < Date.parse('2026-06-20') ? 6 : 0;
      await aWeatherDay(product.database, station, { day: dateOf(at), tmax_c: null, tmin_c: null, given_eto_mm: 6 + nth, rain_mm: rain });
    }
  properties = [];
  for (let nth = 0; nth < PROPERTIES; nth += 1) properties.push(await aWateredProperty(nth));
}, 120_000);
afterAll(() => product.close());

it('computes many properties as it computes each alone', async () => {
  expect(await recompute(null)).toBe(`${PROPERTIES} properties, ${3 * PROPERTIES} months computed`);
  const together = await accounts(NUMBERS);
  const found = (await findings()).map(({ kind, litres, evidence }) => ({ kind, litres, evidence }));
  expect(together).toHaveLength(3 * PROPERTIES);
  expect(together.filter(({ needed_l, programmed_l, metered_l }) => needed_l && programmed_l && metered_l).length).toBeGreaterThan(
    PROPERTIES,
  );
  expect(found.length).toBeGreaterThan(2);
  await product.database.admin('delete from month_account where organization_id = $1', [organizationId]);
  await product.database.admin('delete from finding where organization_id = $1', [organizationId]);
  for (const { id } of properties) expect(await recompute(id)).toBe('1 property, 3 months computed');
  expect(await accounts(NUMBERS)).toEqual(together);
  expect((await findings()).map(({ kind, litres, evidence }) => ({ kind, litres, evidence }))).toEqual(found);
});

it('leaves accounts and findings as they are where nothing has changed', async () => {
  const before = [await accounts(KEPT), await findings()];
  expect(await recompute(null)).toBe(`${PROPERTIES} properties, 0 months computed`);
  expect([await accounts(KEPT), await findings()]).toEqual(before);
});

it('computes the months anew that a day of weather enters: by its balance, or by a reading across their end', async () => {
  const changed = async (day: string): Promise<string[]> => {
    const before = new Map((await accounts('id, month, property_id')).map((row) => [row['id'], row]));
    await product.database.admin('update weather_day set given_eto_mm = given_eto_mm + 1 where station_id = $1 and day = $2', [
      stations[1]!.id,
      day,
    ]);
    await recompute(null);
    const renewed = (await accounts('id, month::text, property_id')).filter(({ id }) => !before.has(id));
    expect(renewed.every(({ property_id }) => properties.findIndex(({ id }) => id === property_id) % 2 === 1)).toBe(true);
    return [...new Set(renewed.map(({ month }) => String(month).slice(0, 7)))];
  };
  expect(await changed('2026-07-25')).toEqual(['2026-07', '2026-08']);
  // The reading of the 2nd of July ends an interval that began in June.
  expect(await changed('2026-07-01')).toEqual(['2026-06', '2026-07', '2026-08']);
  expect(await changed('2026-08-03')).toEqual(['2026-08']);
});
