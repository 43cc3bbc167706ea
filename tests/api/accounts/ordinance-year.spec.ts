import { afterAll, beforeAll, expect, it } from 'vitest';
import { type Somebody, startApp, type TestApp } from '../../support/test-app.js';
import { importInto } from '../exchange/exchange-kit.js';

const days = Array.from({ length: 365 }, (_, at) => new Date(Date.UTC(2025, 0, 1 + at)).toISOString().slice(0, 10));
const FILES = {
  'clients.csv': 'client\nOne\n',
  'stations.csv': 'station,latitude,longitude,elevation_ft\nHill,38,-121,100\nNew,40,-121,100\n',
  'weather.csv': `station,date,eto_in,rain_in\n${days.map((date) => `Hill,${date},0.2,0`).join('\n')}\nNew,2025-06-01,0.2,0\n`,
  'properties.csv':
    'property,client,latitude,longitude,weather_station,allowance_from,allowance_etaf,special_landscape_area_sqft\nFull,One,38,-121,Hill,ordinance,0.45,2000\nShort,One,38,-121,New,ordinance,0.45,\nBare,One,38,-121,Hill,ordinance,0.45,\nFree,One,38,-121,Hill,,,\n',
  'zones.csv':
    'property,zone,area_sqft,method,flow_gpm,hand_gal_per_week\nFull,Lawn,10000,spray,20,\nFull,Pots,500,hand,,7\nShort,Lawn,10000,spray,20,\nFree,Lawn,10000,spray,20,\n',
};

let product: TestApp;
let office: Somebody;
beforeAll(async () => {
  product = await startApp();
  const organizationId = await product.organization();
  office = await product.somebody(organizationId, 'office');
  const report = await importInto(product, organizationId, FILES);
  expect(report.files.flatMap(({ problems }) => problems)).toEqual([]);
});
afterAll(() => product.close());

it('what the ordinance allows in a usual year is told beside the month, or why it is not known', async () => {
  const { data, errors } = await office.send('{ properties { name ordinanceYear { litres reason } } }');
  expect(errors ?? []).toEqual([]);
  const years = Object.fromEntries(
    data.properties.map(({ name, ordinanceYear }: { name: string; ordinanceYear: unknown }) => [name, ordinanceYear]),
  );
  // MAWA = ETo · 0.62 · (ETAF · LA + (1 − ETAF) · SLA), 23 CCR 492.4, Appendix B: 365.25 days of 0.2 in, by hand; hand-watered pots are no part.
  const gallons = 365.25 * 0.2 * 0.62 * (0.45 * 10_000 + 0.55 * 2000);
  expect(years.Full).toEqual({ litres: expect.closeTo(gallons * 3.785411784, 0), reason: null });
  expect(years.Short).toEqual({ litres: null, reason: 'normals-missing' });
  expect(years.Bare).toEqual({ litres: null, reason: 'no-zones' });
  expect(years.Free).toBeNull();
});
