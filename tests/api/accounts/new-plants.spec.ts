import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { aMeter, aPlanting, aProperty, aReading, aWeatherDay, aWeatherStation, aZone, type Built } from '../../support/builders.js';
import { type Somebody, type TestApp, startApp } from '../../support/test-app.js';

// An invented dry summer of 8 mm of reference ET a day. Without rain a zone needs exactly what its plants lose, so that every need can be
// worked by hand from the documented model of young plants: plant factor from 0.8 and density from 0.7 evenly to those of grown ones (common
// practice, no source).
const ETO = 8;
const AREA = 100;

const days = (from: string, until: string): string[] => {
  const list: string[] = [];
  for (let at = Date.parse(from); at <= Date.parse(until); at += 86_400_000) list.push(new Date(at).toISOString().slice(0, 10));
  return list;
};

let product: TestApp;
let office: Somebody;
let organizationId: string;
let property: Built;
const zones: Record<string, Built> = {};

const compute = async (): Promise<string> => {
  const asked = await office.send('mutation($id: ID!) { recomputeAccounts(propertyId: $id) { id } }', { id: property.id });
  expect(asked.errors).toEqual([]);
  await product.drain();
  const { data } = await office.send('query($id: ID!) { job(id: $id) { says } }', { id: asked.data.recomputeAccounts.id });
  return data.job.says;
};

const account = async (month: string) => {
  const query =
    'query($id: ID!, $month: Month!) { property(id: $id) { account(month: $month) { zones { zoneId neededLitres } notes { code details } } } }';
  const { data, errors } = await office.send(query, { id: property.id, month });
  expect(errors).toEqual([]);
  const { zones: lines, notes } = data.property.account;
  return {
    needed: (name: string): number => lines.find((line: { zoneId: string }) => line.zoneId === zones[name]!.id).neededLitres as number,
    establishing: (name: string): number | undefined =>
      notes.find(
        (note: { code: string; details: { zoneId: string } }) =>
          note.code === 'plants-establishing' && note.details.zoneId === zones[name]!.id,
      )?.details.share,
    assumed: (name: string): string[] =>
      notes
        .filter(
          (note: { code: string; details: { zoneId: string } }) => note.code === 'input-assumed' && note.details.zoneId === zones[name]!.id,
        )
        .map((note: { details: { input: string } }) => note.details.input)
        .sort(),
  };
};

/** What a zone of shrubs loses in a month of so many days, when so much of its establishment has passed. */
const shrubs = (monthDays: number, share: number): number => monthDays * ETO * AREA * (0.8 + share * (0.5 - 0.8)) * (0.7 + share * 0.3);

beforeAll(async () => {
  product = await startApp();
  const { database } = product;
  organizationId = await product.organization();
  await database.admin(`update organization set stands_still_on = '2026-08-05' where id = $1`, [organizationId]);
  office = await product.somebody(organizationId, 'office');
  const station = await aWeatherStation(database, organizationId);
  for (const day of days('2026-03-01', '2026-08-04'))
    await aWeatherDay(database, station, { day, tmax_c: null, tmin_c: null, given_eto_mm: ETO, rain_mm: 0 });
  property = await aProperty(database, organizationId, { weather_station_id: station.id });
  const shrubZone = { area_m2: AREA, plants: 'shrubs', method: 'drip', du_lq: 1, sun: 'full', soil: 'loam' };
  const zone = async (name: string, columns: Record<string, unknown>) => {
    zones[name] = await aZone(database, property, { ...shrubZone, name, ...columns });
    return zones[name];
  };
  await zone('grown', {});
  await zone('new', { established_on: '2026-06-15' });
  await zone('stated', { established_on: '2026-06-15', plant_factor: 0.6, density: 1.1 });
  await zone('sod', { established_on: '2026-07-01', plants: 'turf warm-season', water_need: 'moderate' });
  await zone('mixed ages', {});
  await aPlanting(database, zones['mixed ages']!, { cover_percent: 25, planted_on: '2026-07-01' });
  await aPlanting(database, zones['mixed ages']!, { cover_percent: 75 });
  // An account begins with the first thing that is known of a property.
  const meter = await aMeter(database, property, { unit: 'L', digits: 8 });
  await aReading(database, meter, { read_at: '2026-06-01T07:00:00Z', register: 0 });
  await aReading(database, meter, { read_at: '2026-08-01T07:00:00Z', register: 100_000 });
  await compute();
});
afterAll(() => product.close());

describe('a zone that was planted lately', () => {
  it('needs in each month what plants of that age lose, and says that this is assumed', async () => {
    // The month of planting begins on that day; on 1 July 16 of 365 days have passed.
    const [june, july] = [await account('2026-06'), await account('2026-07')];
    expect(june.needed('new')).toBeCloseTo(shrubs(30, 0), 6);
    expect(july.needed('new')).toBeCloseTo(shrubs(31, 16 / 365), 6);
    expect(july.assumed('new')).toEqual(['density', 'plantFactor', 'rawMm']);
    expect(july.establishing('new')).toBeCloseTo(16 / 365, 12);
    expect(july.establishing('grown')).toBeUndefined();
  });

  it('needs more than grown shrubs of the same bed, which need what they always did', async () => {
    const july = await account('2026-07');
    expect(july.needed('grown')).toBeCloseTo(shrubs(31, 1), 6);
    expect(july.needed('new')).toBeGreaterThan(july.needed('grown'));
    expect(july.assumed('grown')).toEqual(['plantFactor', 'rawMm']);
  });

  it('keeps a plant factor and a density that somebody stated', async () => {
    const july = await account('2026-07');
    expect(july.needed('stated')).toBeCloseTo(31 * ETO * AREA * 0.6 * 1.1, 6);
    expect(july.assumed('stated')).toEqual(['rawMm']);
  });

  it('waters sod as a moist bed in its first month and as turf after six weeks', async () => {
    expect((await account('2026-07')).needed('sod')).toBeCloseTo(31 * ETO * AREA, 6);
    // On 1 August 31 of 42 days have passed; the month is covered up to the 4th.
    expect((await account('2026-08')).needed('sod')).toBeCloseTo(4 * ETO * AREA * (1 + (31 / 42) * (0.6 - 1)), 6);
  });

  it('weighs plants of several ages by what they cover', async () => {
    expect((await account('2026-07')).needed('mixed ages')).toBeCloseTo(shrubs(31, 0.75), 6);
  });
});

it('a planting that is dated anew brings the accounts up to date', async () => {
  const before = (await account('2026-07')).needed('grown');
  expect(await compute()).toBe('1 property, 0 months computed');
  const sent = await office.send('mutation($input: PlantingInput!) { createPlanting(input: $input) { __typename } }', {
    input: { zoneId: zones['grown']!.id, species: 'Salvia nemorosa', plantedOn: '2026-07-10' },
  });
  expect(sent.data.createPlanting.__typename).toBe('Planting');
  await product.drain();
  expect((await account('2026-07')).needed('grown')).toBeCloseTo(shrubs(31, 0), 6);
  expect((await account('2026-07')).needed('grown')).toBeGreaterThan(before);
  expect((await account('2026-06')).needed('grown')).toBeCloseTo(shrubs(30, 1), 6);
});
