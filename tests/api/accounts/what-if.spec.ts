import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { askingYear, type YearOfProperty } from '../../../apps/web/src/features/property/what-if/ask-year.js';
import { aController, aMeter, aProperty, aReading, aWeatherDay, aWeatherStation, aZone, type Built } from '../../support/builders.js';
import { type Somebody, type TestApp, startApp } from '../../support/test-app.js';

// An invented place with dry summers and showers in winter.
const TODAY = '2026-08-05';
const FIRST_WEATHER = '2025-04-20';
const weatherOn = (at: number) => {
  const season = Math.sin((2 * Math.PI * (at - 10)) / 365);
  return { given_eto_mm: 4 + 3 * season, rain_mm: season < 0 && at % 9 < 2 ? 6 + (at % 5) : 0 };
};

let product: TestApp;
let office: Somebody;
let organizationId: string;
let property: Built;
const zones: Record<string, Built> = {};

const WHAT_IF = `whatIf(until: $until) { months weather { firstDay etoMm rainMm }
  stages { months zones { zoneId areaM2 plantFactor density shade rawMm duLq leachingFraction assumed isCounted } } }`;

interface Answered extends YearOfProperty {
  readonly months: readonly string[];
}

const whatIf = async (somebody: Somebody, until: string | null = null, id = property.id): Promise<Answered | null> => {
  const { data, errors } = await somebody.send(`query($id: ID!, $until: Month) { property(id: $id) { ${WHAT_IF} } }`, { id, until });
  expect(errors).toEqual([]);
  return data.property.whatIf;
};

const accounts = async (from: string, until: string) => {
  const query =
    'query($id: ID!, $from: Month, $until: Month) { property(id: $id) { accounts(from: $from, until: $until) { month needed { litres } zones { zoneId neededLitres } } } }';
  const { data, errors } = await office.send(query, { id: property.id, from, until });
  expect(errors).toEqual([]);
  return data.property.accounts as { month: string; needed: { litres: number }; zones: { zoneId: string; neededLitres: number }[] }[];
};

beforeAll(async () => {
  product = await startApp();
  const { database } = product;
  organizationId = await product.organization();
  await database.admin(`update organization set stands_still_on = '${TODAY}' where id = $1`, [organizationId]);
  office = await product.somebody(organizationId, 'office');
  const station = await aWeatherStation(database, organizationId);
  const first = Date.parse(FIRST_WEATHER);
  for (let at = 0; first + at * 86_400_000 < Date.parse(TODAY); at += 1)
    await aWeatherDay(database, station, {
      day: new Date(first + at * 86_400_000).toISOString().slice(0, 10),
      tmax_c: null,
      tmin_c: null,
      ...weatherOn(at),
    });
  property = await aProperty(database, organizationId, { weather_station_id: station.id });
  const meter = await aMeter(database, property, { unit: 'L', digits: 8 });
  const later = await aMeter(database, property, { unit: 'L', digits: 8, installed_on: '2026-02-10' });
  await aReading(database, meter, { read_at: '2025-07-20T07:00:00Z', register: 0 });
  await aReading(database, meter, { read_at: '2026-08-01T07:00:00Z', register: 900_000 });
  await aReading(database, later, { read_at: '2026-02-10T20:00:00Z', register: 0 });
  const controller = await aController(database, property);
  const zone = async (name: string, station_: number | null, columns: Record<string, unknown>) => {
    zones[name] = await aZone(database, property, {
      name,
      meter_id: meter.id,
      ...(station_ === null ? {} : { controller_id: controller.id, station: station_ }),
      ...columns,
    });
  };
  await zone('lawn', 1, { area_m2: 740, soil: 'loam', sun: 'full', du_lq: 0.58 });
  await zone('beds', 2, { area_m2: 220, plants: 'shrubs', method: 'drip', sun: 'part', leaching_fraction: 0.1, density: 0.9 });
  await zone('young', 3, { area_m2: 150, plants: 'shrubs', method: 'drip', established_on: '2026-03-15' });
  await zone('annex', 4, { area_m2: 90, plants: 'groundcover', meter_id: later.id });
  await zone('pots', null, { area_m2: 10, plants: 'annuals', method: 'hand' });
  await office.send('mutation($id: ID!) { recomputeAccounts(propertyId: $id) { id } }', { id: property.id });
  await product.drain();
});
afterAll(() => product.close());

describe('a year that is asked what if', () => {
  it('needs as it is what the accounts of its months say, zone by zone and in all', async () => {
    const given = (await whatIf(office))!;
    const ask = askingYear(given)!;
    const kept = await accounts(given.months[0]!, given.months.at(-1)!);
    expect(kept.map(({ month }) => month)).toEqual(given.months);
    const asItIs = ask(null, (zone) => zone);
    kept.forEach(({ needed, zones: lines }, at) => {
      expect(asItIs[at]).toBeCloseTo(needed.litres, 6);
      for (const { zoneId, neededLitres } of lines) expect(ask(zoneId, (zone) => zone)[at]).toBeCloseTo(neededLitres, 6);
    });
    expect(kept.reduce((sum, { needed }) => sum + needed.litres, 0)).toBeGreaterThan(100_000);
  });

  it('is twelve months that are over, in stages by what its zones were', async () => {
    const given = (await whatIf(office))!;
    expect([given.months.length, given.months[0], given.months.at(-1)]).toEqual([12, '2025-08', '2026-07']);
    expect(given.stages.flatMap(({ months }) => months)).toEqual(given.months);
    // Shrubs grow in from March on; the annex is metered from February on.
    expect(given.stages.map(({ months }) => months[0])).toEqual([
      '2025-08',
      '2026-02',
      '2026-03',
      '2026-04',
      '2026-05',
      '2026-06',
      '2026-07',
    ]);
    const counted = (stage: number) => given.stages[stage]!.zones.filter(({ isCounted }) => isCounted).map(({ zoneId }) => zoneId);
    expect(counted(0)).not.toContain(zones['annex']!.id);
    expect(counted(1)).toContain(zones['annex']!.id);
    expect(counted(1)).not.toContain(zones['pots']!.id);
  });

  it('says what of a zone nobody stated', async () => {
    const given = (await whatIf(office))!;
    const assumed = (name: string) => given.stages.at(-1)!.zones.find(({ zoneId }) => zoneId === zones[name]!.id)!.assumed;
    expect(assumed('lawn')).not.toContain('duLq');
    expect(assumed('beds')).toContain('duLq');
  });

  it('ends with the month asked for where that one is over, and begins its weather 90 days before', async () => {
    const given = (await whatIf(office, '2026-06'))!;
    expect([given.months[0], given.months.at(-1)]).toEqual(['2025-07', '2026-06']);
    // Weather is known from 20 April only; 90 days before 1 July would be 2 April.
    expect([given.weather!.firstDay, given.weather!.etoMm.length]).toEqual([FIRST_WEATHER, 437]);
    expect((await whatIf(office, '2026-08'))!.months.at(-1)).toBe('2026-07');
    const { data } = await office.send('query($id: ID!) { property(id: $id) { whatIf { months } } }', { id: property.id });
    expect(data.property.whatIf.months.at(-1)).toBe('2026-07');
    expect((await whatIf(office))!.weather!.firstDay).toBe('2025-05-03');
  });

  it('has no number for a month whose weather is not known', async () => {
    const given = (await whatIf(office, '2026-01'))!;
    const litres = askingYear(given)!(zones['lawn']!.id, (zone) => zone);
    expect(given.months.slice(0, 3)).toEqual(['2025-02', '2025-03', '2025-04']);
    expect(litres.slice(0, 3)).toEqual([null, null, null]);
    expect(litres[3]).toBeGreaterThan(0);
  });

  it('gives neither weather nor zones where there are none', async () => {
    const bare = await aProperty(product.database, organizationId);
    const given = (await whatIf(office, null, bare.id))!;
    expect(given.weather).toBeNull();
    expect(askingYear(given)).toBeNull();
    expect(given.stages.map((stage) => stage.zones)).toEqual([[]]);
  });

  it('is for those who read the portfolio', async () => {
    // The client has this property within its scope, and sees no year of it.
    expect(await whatIf(await product.somebody(organizationId, 'client', property['client_id']))).toBeNull();
    expect(await whatIf(await product.somebody(organizationId, 'owner'))).not.toBeNull();
  });
});
