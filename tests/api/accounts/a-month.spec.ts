import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  aController,
  aMeter,
  aProperty,
  aRateTier,
  aReading,
  aWaterSupplier,
  aWeatherDay,
  aWeatherStation,
  aZone,
  type Built,
  someSettings,
} from '../../support/builders.js';
import { type Somebody, type TestApp, startApp } from '../../support/test-app.js';

// An invented July whose every number can be worked by hand: 8 mm of reference ET a day, no rain, one lawn of 100 m²
// with plant factor 1 and perfect uniformity, 10 L/min for 120 minutes every day, and a meter that passed 48,000 L.
const NEEDED = 31 * 8 * 100;
const PROGRAMMED = 31 * 120 * 10;
const METERED = 48_000;
// 23 CCR 492.4 (MAWA): ETo [in] x 0.62 x ETAF x landscape area [ft²] gallons, with ETAF 0.45.
const ALLOWED = ((31 * 8) / 25.4) * 0.62 * 0.45 * (100 / 0.09290304) * 3.785411784;

const days = (from: string, until: string): string[] => {
  const list: string[] = [];
  for (let at = Date.parse(from); at <= Date.parse(until); at += 86_400_000) list.push(new Date(at).toISOString().slice(0, 10));
  return list;
};

const ACCOUNT = `account(month: $month) {
  month through daysCovered etoMm rainMm pricePerLitre inputsVersion computedAt
  allowed { litres sdLitres reason { code } } needed { litres sdLitres estimatedShare reason { code } } programmed { litres reason { code } } metered { litres reason { code } }
  landscapeGap { litres } settingsGap { litres sdLitres } unexplainedGap { litres money within estimate { code } } aboveNeed { litres inputs { input subjectId subjectName share } } aboveAllowed { litres }
  overLitres underLitres zones { neededLitres programmedLitres overLitres minutes }
}`;

let product: TestApp;
let office: Somebody;
let organizationId: string;
let property: Built;
let controller: Built;
let meter: Built;

const account = async (month: string) =>
  (await office.send(`query($id: ID!, $month: Month!) { property(id: $id) { ${ACCOUNT} } }`, { id: property.id, month })).data.property
    .account;
const findings = async () =>
  (
    await office.send(
      'query($id: ID!) { property(id: $id) { findings { id version kind state litres money says { code } cameBack resolvedWith } } }',
      { id: property.id },
    )
  ).data.property.findings;
const recompute = async () => {
  const asked = await office.send('mutation($id: ID!) { recomputeAccounts(propertyId: $id) { id state } }', { id: property.id });
  expect(asked.errors).toEqual([]);
  await product.drain();
  const { data } = await office.send('query($id: ID!) { job(id: $id) { state says done total } }', { id: asked.data.recomputeAccounts.id });
  expect(data.job.state).toBe('done');
  return data.job.says as string;
};

beforeAll(async () => {
  product = await startApp();
  const { database } = product;
  organizationId = await product.organization();
  await database.admin(`update organization set stands_still_on = '2026-08-05', least_litres = 1000, least_money = 1 where id = $1`, [
    organizationId,
  ]);
  office = await product.somebody(organizationId, 'office');
  const station = await aWeatherStation(database, organizationId);
  for (const day of days('2026-04-01', '2026-08-04'))
    await aWeatherDay(database, station, { day, tmax_c: null, tmin_c: null, given_eto_mm: 8, rain_mm: 0 });
  const supplier = await aWaterSupplier(database, organizationId);
  await aRateTier(database, supplier, { price: 4 });
  property = await aProperty(database, organizationId, {
    weather_station_id: station.id,
    water_supplier_id: supplier.id,
    allowance_from: 'ordinance',
    allowance_etaf: 0.45,
  });
  meter = await aMeter(database, property, { unit: 'L', digits: 8 });
  controller = await aController(database, property);
  await aZone(database, property, {
    controller_id: controller.id,
    station: 1,
    area_m2: 100,
    plant_factor: 1,
    du_lq: 1,
    flow_l_per_min: 10,
    flow_source: 'measured',
    precip_mm_per_h: null,
    sun: 'full',
  });
  await someSettings(database, controller, {
    effective_at: '2026-06-20T12:00:00Z',
    programs: [
      {
        name: 'A',
        days: 'daily',
        starts: ['05:00'],
        adjustPercent: 100,
        stations: [{ station: 1, minutes: 120, cycles: 1, soakMinutes: 0 }],
      },
    ],
  });
  await aReading(database, meter, { read_at: '2026-07-01T07:00:00Z', register: 100_000 });
  await aReading(database, meter, { read_at: '2026-08-01T07:00:00Z', register: 100_000 + METERED });
  await recompute();
});
afterAll(() => product.close());

describe('the account of a month', () => {
  it('has the four volumes as worked by hand', async () => {
    const july = await account('2026-07');
    expect(july).toMatchObject({ month: '2026-07', through: '2026-07-31', daysCovered: 31, rainMm: 0 });
    expect(july.etoMm).toBeCloseTo(248, 9);
    expect(july.needed.litres).toBeCloseTo(NEEDED, 6);
    expect(july.programmed.litres).toBeCloseTo(PROGRAMMED, 6);
    expect(july.metered.litres).toBeCloseTo(METERED, 6);
    expect(july.allowed.litres).toBeCloseTo(ALLOWED, 3);
  });

  it('has three gaps that add up, priced at the tier', async () => {
    const july = await account('2026-07');
    expect(july.landscapeGap.litres + july.settingsGap.litres + july.unexplainedGap.litres).toBeCloseTo(july.aboveAllowed.litres, 6);
    expect(july.settingsGap.litres).toBeCloseTo(PROGRAMMED - NEEDED, 6);
    expect(july.unexplainedGap.litres).toBeCloseTo(METERED - PROGRAMMED, 6);
    // One CCF is 2,831.6846592 L.
    expect(july.unexplainedGap.money).toBeCloseTo(((METERED - PROGRAMMED) * 4) / 2831.6846592, 6);
    expect(july.zones).toEqual([
      {
        neededLitres: expect.closeTo(NEEDED, 6),
        programmedLitres: expect.closeTo(PROGRAMMED, 6),
        overLitres: expect.closeTo(PROGRAMMED - NEEDED, 6),
        minutes: 3720,
      },
    ]);
  });

  it('names the inputs that a gap is uncertain by, the largest first, and what they are inputs of', async () => {
    const july = await account('2026-07');
    const { data } = await office.send('query($id: ID!) { property(id: $id) { zones { id name } meters { id name } } }', {
      id: property.id,
    });
    const nameOf = new Map([...data.property.zones, ...data.property.meters].map(({ id, name }) => [id, name]));
    const { inputs } = july.aboveNeed;
    expect(inputs).toHaveLength(5);
    // 15 % of the plant factor against 8 % of the uniformity, 5 % of the area and 1.5 % of the meter; the weather has no subject.
    expect(inputs[0]).toMatchObject({ input: 'plantFactor', subjectId: data.property.zones[0].id });
    const shares = inputs.map(({ share }: { share: number }) => share);
    expect(shares).toEqual(shares.toSorted((a: number, b: number) => b - a));
    expect(shares.reduce((sum: number, share: number) => sum + share, 0)).toBeLessThanOrEqual(1 + 1e-9);
    for (const { subjectId, subjectName } of inputs) expect(subjectName).toBe(subjectId === null ? null : nameOf.get(subjectId));
    expect(inputs.map(({ input }: { input: string }) => input)).toContain('eto');
    expect(july.unexplainedGap.estimate).toBeNull();
  });

  it('says why a volume is absent instead of a number', async () => {
    const june = await account('2026-06');
    expect(june.programmed).toEqual({ litres: null, reason: { code: 'settings-not-known' } });
    expect(june.metered.reason.code).toBe('readings-missing');
  });
});

describe('findings of the account', () => {
  it('open one for each cause', async () => {
    // One month of one meter cannot yet tell a leak of this size from flows that are off; settings and allowance need no habit.
    expect((await findings()).map((finding: { kind: string }) => finding.kind).sort()).toEqual(['over allowance', 'over-programmed']);
    await recompute();
    expect(await findings()).toHaveLength(2);
  });

  it('are dismissed with a reason, and stay silent while they are seen', async () => {
    const excess = (await findings()).find((finding: { kind: string }) => finding.kind === 'over allowance');
    const dismissed = await office.send(
      'mutation($id: ID!, $version: Int!) { dismissFinding(id: $id, version: $version, why: "a hydrant was flushed") { __typename ... on Finding { state dismissedWhy decidedBy } } }',
      excess,
    );
    expect(dismissed.data.dismissFinding).toEqual({
      __typename: 'Finding',
      state: 'dismissed',
      dismissedWhy: 'a hydrant was flushed',
      decidedBy: 'The office',
    });
    await recompute();
    expect((await findings()).find((finding: { kind: string }) => finding.kind === 'over allowance').state).toBe('dismissed');
  });
});

describe('a new fact', () => {
  it('recomputes only the months that it touches', async () => {
    expect(await recompute()).toBe('1 property, 0 months computed');
    const before = { june: await account('2026-06'), july: await account('2026-07') };
    const sent = await office.send('mutation($input: ReadingInput!) { recordReading(input: $input) { __typename } }', {
      input: {
        deviceRecordId: '01890000-0000-7000-8000-000000000001',
        meterId: meter.id,
        readAt: '2026-08-04T07:00:00Z',
        register: 151_000,
      },
    });
    expect(sent.data.recordReading.__typename).toBe('Reading');
    await product.drain();
    expect((await account('2026-06')).computedAt).toBe(before.june.computedAt);
    expect((await account('2026-07')).inputsVersion).toBe(before.july.inputsVersion);
    const august = await account('2026-08');
    // The reading at midnight makes the 3rd the last day that the meter has seen whole.
    expect(august).toMatchObject({ through: '2026-08-03', daysCovered: 3, metered: { litres: expect.closeTo(3000, 6) } });
  });

  it('shows in the portfolio, ranked, with the reason', async () => {
    const { data, errors } = await office.send(
      '{ portfolio(month: "2026-07") { month through sums { properties overProperties aboveNeedLitres settingsLitres unexplainedLitres unsplitLitres notCounted } total rows { property { name client { name } } account { aboveNeed { litres } } topFinding { kind } why { code } findingCount } } }',
    );
    expect(errors).toEqual([]);
    expect(data.portfolio).toMatchObject({ month: '2026-07', total: 1, sums: { properties: 1, overProperties: 1, notCounted: 0 } });
    const { aboveNeedLitres, settingsLitres, unexplainedLitres, unsplitLitres } = data.portfolio.sums;
    expect(aboveNeedLitres).toBeCloseTo(METERED - NEEDED, 6);
    expect(settingsLitres + unexplainedLitres + unsplitLitres).toBeCloseTo(aboveNeedLitres, 6);
    expect(unsplitLitres).toBe(0);
    expect(data.portfolio.rows[0].topFinding.kind).toBe('over-programmed');
  });
});
