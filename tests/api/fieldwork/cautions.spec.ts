import { afterAll, beforeAll, expect, it } from 'vitest';
import { aBackflowAssembly, aController, aMeter, aWeatherDay, aWeatherStation } from '../../support/builders.js';
import { type TestApp, startApp } from '../../support/test-app.js';
import { type FieldDay, close, fieldDay } from './field-day.js';

let product: TestApp;
let day: FieldDay;

beforeAll(async () => {
  product = await startApp();
  day = await fieldDay(product);
});
afterAll(() => product.close());

const cautionsAt = async (stopId: string | null) =>
  (await day.technician.send('query($id: ID!) { stop(id: $id) { cautions } }', { id: stopId })).data.stop.cautions;

it('knows of no caution where nothing is on record', async () => {
  expect(await cautionsAt((await day.given({ propertyId: (await day.property()).id }, '2026-07-06')).stopId)).toEqual([]);
});

it('tells all that is on record, in the order in which it is shown', async () => {
  const station = await aWeatherStation(product.database, day.organizationId);
  await aWeatherDay(product.database, station, { day: '2026-07-05', tmax_c: 38.2 });
  const property = await day.property({ notes: 'Gate code at the office', weather_station_id: station.id });
  await aMeter(product.database, property, { water: 'recycled', pressure_kpa: 600 });
  await aController(product.database, property);
  await aBackflowAssembly(product.database, property);
  const { stopId } = await day.given({ propertyId: property.id, kind: 'repair' }, '2026-07-06');
  expect(await cautionsAt(stopId)).toEqual(['access-note', 'recycled-water', 'mains-voltage', 'backflow', 'digging', 'pressure', 'heat']);
});

it('forgets what is retired, removed, done or past, and what is below the limits', async () => {
  const station = await aWeatherStation(product.database, day.organizationId);
  await aWeatherDay(product.database, station, { day: '2026-07-01', tmax_c: 41 });
  await aWeatherDay(product.database, station, { day: '2026-07-06', tmax_c: 34.9 });
  const property = await day.property({ notes: '  ', weather_station_id: station.id });
  // 551.58 kPa is 80 psi (NIST SP 811: 1 psi = 6.894757 kPa)
  await aMeter(product.database, property, { pressure_kpa: 551.58 });
  await aMeter(product.database, property, { water: 'recycled', removed_on: '2026-01-31' });
  await aController(product.database, property, { retired_at: '2026-01-31T00:00:00Z' });
  const order = await day.given({ propertyId: property.id, kind: 'upgrade' }, '2026-07-06');
  expect(await cautionsAt(order.stopId)).toEqual(['digging']);
  await close(day.technician, order, { done: true });
  expect(await cautionsAt(order.stopId)).toEqual([]);
});
