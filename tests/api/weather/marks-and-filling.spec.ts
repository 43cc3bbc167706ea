import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { aController, aMeter, aProperty, aReading, aWeatherDay, aWeatherStation, aZone, type Built } from '../../support/builders.js';
import { countStatements } from '../../support/count-statements.js';
import { type Somebody, startApp, type TestApp } from '../../support/test-app.js';

let product: TestApp;
let office: Somebody;
let valley: Built;
let hill: Built;
let property: Built;

const FIRST = Date.parse('2026-04-01');
const DAYS = 126;
const date = (at: number): string => new Date(FIRST + at * 86_400_000).toISOString().slice(0, 10);
/** Swings between -1 and 1 without repeating itself. */
const swing = (at: number): number => Math.sin(at * 12.9898) * Math.cos(at * 4.1414);

const HOLE = ['2026-07-10', '2026-07-11'];
const STUCK = ['2026-06-10', '2026-06-16'] as const;

/** An invented dry summer; the second station is two degrees cooler and a quarter windier. */
const dayOf = (at: number, cooler: number) => ({
  day: date(at),
  tmax_c: 31 - cooler + 3 * swing(at) + 0.3 * cooler * swing(at + 7),
  tmin_c: 14 - cooler + 2 * swing(at + 0.5),
  rh_max_percent: 86 + 4 * swing(at + 1),
  rh_min_percent: 34 + 5 * swing(at + 2),
  wind_m_per_s: (1 + cooler / 8) * (2.1 + 0.6 * swing(at + 4)),
  wind_height_m: 2,
  solar_mj_per_m2: 24 + 2 * swing(at + 5),
});

interface Told {
  day: string;
  tmaxC: number | null;
  etoMm: number | null;
  etoRelativeSd: number | null;
  etoAssumed: string[];
  estimated: boolean;
  filling: { source: string; stationName: string | null; days: number } | null;
  reckonedRainMm: number | null;
  rainFromNeighbour: boolean;
  marks: { value: string; mark: string; effect: string; reason: string }[];
}

const FIELDS =
  'day tmaxC etoMm etoRelativeSd etoMethod etoAssumed estimated filling { source stationName days } reckonedRainMm rainFromNeighbour marks { value mark effect reason }';
const daysOf = async (station: Built, from: string, until: string): Promise<Told[]> => {
  const { data, errors } = await office.send(
    `query($id: ID!, $from: Date!, $until: Date!) { weatherDays(stationId: $id, from: $from, until: $until) { ${FIELDS} } }`,
    { id: station.id, from, until },
  );
  expect(errors ?? []).toEqual([]);
  return data.weatherDays;
};
const accountOf = async (month: string) =>
  (
    await office.send(
      `query($id: ID!, $month: Month!) { property(id: $id) { account(month: $month) {
        through etoMm rainMm inputsVersion computedAt allowed { litres sdLitres estimatedShare } needed { litres sdLitres estimatedShare reason { code } } notes { code details }
      } } }`,
      { id: property.id, month },
    )
  ).data.property.account;
const recompute = async (): Promise<void> => {
  const asked = await office.send('mutation($id: ID!) { recomputeAccounts(propertyId: $id) { id } }', { id: property.id });
  expect(asked.errors).toEqual([]);
  await product.drain();
};

beforeAll(async () => {
  product = await startApp();
  const { database } = product;
  const organizationId = await product.organization();
  await database.admin(`update organization set stands_still_on = '2026-08-05' where id = $1`, [organizationId]);
  office = await product.somebody(organizationId, 'office');
  valley = await aWeatherStation(database, organizationId, { name: 'Valley', latitude: 38.5, longitude: -121.7, elevation_m: 18 });
  // 0.1° of latitude are 11 km.
  hill = await aWeatherStation(database, organizationId, { name: 'Hill', latitude: 38.6, longitude: -121.7, elevation_m: 200 });
  // Nearer, and without a single day: it has none to lend.
  await aWeatherStation(database, organizationId, { name: 'Yard', latitude: 38.51, longitude: -121.7, elevation_m: 20 });
  for (let at = 0; at < DAYS; at += 1) {
    const day = date(at);
    const stuck = day >= STUCK[0] && day <= STUCK[1] ? { rh_max_percent: 71, rh_min_percent: 45 } : {};
    if (!HOLE.includes(day)) await aWeatherDay(database, valley, { ...dayOf(at, 0), ...stuck });
    await aWeatherDay(database, hill, { ...dayOf(at, 2), rain_mm: day === HOLE[1] ? 4 : 0 });
  }
  property = await aProperty(database, organizationId, {
    weather_station_id: valley.id,
    allowance_from: 'ordinance',
    allowance_etaf: 0.45,
  });
  const meter = await aMeter(database, property, { unit: 'L', digits: 8 });
  const controller = await aController(database, property);
  await aZone(database, property, { controller_id: controller.id, station: 1, area_m2: 100, plant_factor: 1 });
  await aReading(database, meter, { read_at: '2026-06-01T07:00:00Z', register: 90_000 });
  await aReading(database, meter, { read_at: '2026-07-01T07:00:00Z', register: 100_000 });
  await aReading(database, meter, { read_at: '2026-08-01T07:00:00Z', register: 120_000 });
  await recompute();
});
afterAll(() => product.close());

describe('a stuck sensor', () => {
  it('has its humidity refused, and the day is computed by the procedure for missing data', async () => {
    const found = await daysOf(valley, '2026-06-09', '2026-06-17');
    const stuck = (value: string) => ({ value, mark: 'persistence', effect: 'refused', reason: 'stuck' });
    expect(found.map(({ marks }) => marks.length)).toEqual([0, 2, 2, 2, 2, 2, 2, 2, 0]);
    expect(found[1]).toMatchObject({
      marks: [stuck('rhMaxPercent'), stuck('rhMinPercent')],
      etoAssumed: ['humidity'],
      etoRelativeSd: expect.closeTo(0.1, 12),
      estimated: false,
    });
    expect(found[0]).toMatchObject({ etoAssumed: [], etoRelativeSd: 0.08 });
  });

  it('is trusted again when the days are recorded anew', async () => {
    const input = { stationId: hill.id, day: '2026-08-04', tmaxC: 29, tminC: 12, rainMm: 0, solarMjPerM2: 40 };
    const record = async (more: object) =>
      (
        await office.send(`mutation($input: WeatherDayInput!) { recordWeatherDay(input: $input) { ${FIELDS} } }`, {
          input: { ...input, ...more },
        })
      ).data.recordWeatherDay as Told;
    expect((await record({})).marks).toEqual([{ value: 'solarMjPerM2', mark: 'clear-sky', effect: 'refused', reason: 'above-atmosphere' }]);
    expect((await record({ solarMjPerM2: 25 })).marks).toEqual([]);
  });
});

describe('a hole of two days', () => {
  it('is filled from the neighbour and marked, with less confidence', async () => {
    const found = await daysOf(valley, '2026-07-09', '2026-07-12');
    expect(found.map(({ day, estimated }) => [day, estimated])).toEqual([
      ['2026-07-09', false],
      ['2026-07-10', true],
      ['2026-07-11', true],
      ['2026-07-12', false],
    ]);
    const [before, first, second] = found as [Told, Told, Told];
    expect(first.tmaxC).toBeNull();
    expect(first.filling).toMatchObject({ source: 'neighbour', stationName: 'Hill' });
    expect(first.filling!.days).toBeGreaterThan(50);
    expect(first.etoRelativeSd!).toBeGreaterThan(before.etoRelativeSd!);
    // The valley is warmer than the hill: what is carried over lies above what the hill itself has.
    const [there] = await daysOf(hill, HOLE[0]!, HOLE[0]!);
    expect(first.etoMm!).toBeGreaterThan(there!.etoMm!);
    expect(second).toMatchObject({ reckonedRainMm: 4, rainFromNeighbour: true });
    expect(before.rainFromNeighbour).toBe(false);
  });

  it('is part of the account, which says so', async () => {
    const july = await accountOf('2026-07');
    expect(july).toMatchObject({ through: '2026-07-31', rainMm: 4 });
    expect(july.needed.estimatedShare).toBeGreaterThan(0.03);
    expect(july.allowed.estimatedShare).toBeGreaterThan(0.03);
    expect(july.notes).toContainEqual({ code: 'weather-filled', details: { neighbourDays: 2, normalDays: 0 } });
    expect((await accountOf('2026-06')).notes.some((note: { code: string }) => note.code === 'weather-filled')).toBe(false);
  });

  it('is reckoned again when the neighbour is corrected', async () => {
    const before = await accountOf('2026-07');
    await office.send(`mutation($input: WeatherDayInput!) { recordWeatherDay(input: $input) { day } }`, {
      input: { stationId: hill.id, day: HOLE[0], tmaxC: 36, tminC: 18, rainMm: 0, rhMaxPercent: 80, rhMinPercent: 30, windMPerS: 3 },
    });
    await product.drain();
    const after = await accountOf('2026-07');
    expect(after.inputsVersion).not.toBe(before.inputsVersion);
    expect(after.needed.litres).toBeGreaterThan(before.needed.litres);
  });

  it('is filled from normals where there is no neighbour; its rain stays unknown', async () => {
    const moved = (latitude: number) =>
      product.database.admin('update weather_station set latitude = $2 where id = $1', [hill.id, latitude]);
    await moved(39.1);
    const [day] = await daysOf(valley, HOLE[0]!, HOLE[0]!);
    expect(day).toMatchObject({
      estimated: true,
      filling: { source: 'normals', stationName: null, days: 29 },
      reckonedRainMm: null,
      rainFromNeighbour: false,
    });
    const others = (await daysOf(valley, '2026-07-01', '2026-07-31')).filter(({ estimated }) => !estimated);
    const mean = others.reduce((sum, { etoMm }) => sum + etoMm!, 0) / others.length;
    expect(day!.etoMm).toBeCloseTo(mean, 9);
    await recompute();
    const july = await accountOf('2026-07');
    // Two of 31 days have no rain: filled in proportion, as days without weather are.
    expect(july.needed.reason).toBeNull();
    expect(july.needed.estimatedShare).toBeCloseTo(2 / 31, 6);
    expect(july.notes).toContainEqual({ code: 'weather-rain-not-known', details: { days: 2 } });
    expect(july.notes.some((note: { code: string }) => note.code === 'weather-filled')).toBe(false);
    await moved(38.6);
    await recompute();
  });
});

describe('a station', () => {
  it('tells what is usual there by the month, and says where it knows too little', async () => {
    const { data } = await office.send(
      '{ weatherStations { name neighbour { name distanceKm } normals { month days etoMm tmaxC reason } } }',
    );
    const told = data.weatherStations.find((one: { name: string }) => one.name === 'Valley');
    expect(told.neighbour).toEqual({ name: 'Hill', distanceKm: expect.closeTo(11.12, 2) });
    expect(told.normals).toHaveLength(12);
    expect(told.normals[0]).toEqual({ month: 1, days: 0, etoMm: null, tmaxC: null, reason: 'too-few-days' });
    expect(told.normals[6]).toMatchObject({ month: 7, days: 29, reason: null });
    expect(told.normals[6].tmaxC).toBeCloseTo(31, 0);
  });

  it('is reckoned in as many statements whether one is asked for or all', async () => {
    const ask = () => office.send('{ weatherStations { normals { etoMm } neighbour { name } } }');
    const two = await countStatements(product.source, ask);
    for (let more = 0; more < 3; more += 1) await aWeatherStation(product.database, office.organizationId, { latitude: 40 + more });
    expect(await countStatements(product.source, ask)).toBe(two);
  });
});
