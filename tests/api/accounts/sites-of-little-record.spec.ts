import { afterAll, beforeAll, expect, it } from 'vitest';
import { startApp, type TestApp } from '../../support/test-app.js';
import { type Files, importInto } from '../exchange/exchange-kit.js';

/** Two sites of 10,000 ft² of sprayed lawn without a controller on record: one is read, of the other there are bills in whole CCF. */
const days = Array.from({ length: 61 }, (_, at) => new Date(Date.UTC(2026, 4, 1 + at)).toISOString().slice(0, 10));
const FILES: Files = {
  'clients.csv': 'client\nOne\n',
  'stations.csv': 'station,latitude,longitude,elevation_ft\nHill,38,-121,100\n',
  'weather.csv': `station,date,eto_in,rain_in\n${days.map((date) => `Hill,${date},0.25,0`).join('\n')}\n`,
  'properties.csv': 'property,client,latitude,longitude,weather_station\nRead,One,38,-121,Hill\nBilled,One,38,-121,Hill\n',
  'meters.csv': 'meter,property,kind,unit\nM,Read,irrigation,CCF\nM,Billed,irrigation,CCF\n',
  'zones.csv':
    'property,zone,area_sqft,method,flow_gpm,hand_gal_per_week\nRead,Lawn,10000,spray,20,\nBilled,Lawn,10000,spray,20,\nBilled,Pots,50,hand,,7\n',
  'readings.csv': 'property,meter,read_at,register\nRead,M,2026-06-01T00:00,100\nRead,M,2026-07-01T00:00,180\n',
  'bills.csv': 'property,meter,start,end,volume,unit\nBilled,M,2026-06-01,2026-07-01,80,CCF\n',
};

let product: TestApp;
let june: Record<string, Record<string, number | null>>;

beforeAll(async () => {
  product = await startApp();
  const organizationId = await product.organization();
  await product.database.admin(`update organization set stands_still_on = '2026-07-05' where id = $1`, [organizationId]);
  const report = await importInto(product, organizationId, FILES);
  expect(report.files.flatMap(({ problems }) => problems)).toEqual([]);
  await product.drain();
  const rows = await product.database.admin<{ name: string }>(
    `select p.name, a.needed_l, a.programmed_l, a.metered_l, a.metered_sd_l, a.above_need_l from month_account a join property p on p.id = a.property_id
     where a.organization_id = $1 and a.month = '2026-06-01' and a.meter_id is null`,
    [organizationId],
  );
  june = Object.fromEntries(rows.map(({ name, ...numbers }) => [name, numbers as Record<string, number | null>]));
}, 120_000);
afterAll(() => product.close());

/** 80 CCF, 748.05 gallons each, 3.785412 L a gallon. */
const METERED_L = 80 * 2831.6846592;

it.each(['Read', 'Billed'])('a sprayed zone without a controller is no hand watering: what is above its need is known (%s)', (name) => {
  const { needed_l: needed, programmed_l: programmed, metered_l: metered, above_need_l: above } = june[name]!;
  expect(metered).toBeCloseTo(METERED_L, 3);
  expect(needed).toBeGreaterThan(0);
  expect(programmed).toBeNull();
  expect(above).toBeCloseTo(METERED_L - needed!, 3);
});

it('a bill of whole units is known no better than registers that are rounded to them', () => {
  // Two roundings to a CCF, each uniform over it: sd 2,832 L x √(2/12) (JCGM 100:2008, 4.3.7), beside the meter's own.
  const rounding = 2831.6846592 * Math.sqrt(1 / 6);
  const own = Math.sqrt(june['Billed']!['metered_sd_l']! ** 2 - rounding ** 2);
  const ownOfReadings = Math.sqrt(june['Read']!['metered_sd_l']! ** 2 - rounding ** 2);
  expect(own).toBeCloseTo(ownOfReadings, 3);
});
