import { afterAll, beforeAll, describe, expect, it } from 'vitest';
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
import { type Somebody, startApp, type TestApp } from '../../support/test-app.js';

// July 2026: 8 mm a day over 100 m2 at plant factor 1, evenly; two hours daily at 10 L/min; 20 mm of rain on 10 July.
const DAY_OF_PROGRAM = 120 * 10;
const METERED = 90_000;

const days = (from: string, until: string): string[] => {
  const list: string[] = [];
  for (let at = Date.parse(from); at <= Date.parse(until); at += 86_400_000) list.push(new Date(at).toISOString().slice(0, 10));
  return list;
};

const ACCOUNT = `account(month: "2026-07") {
  needed { litres } programmed { litres sdLitres estimatedShare reason { code } }
  settingsGap { litres sdLitres estimate { code } inputs { input subjectId subjectName share } }
  unexplainedGap { litres estimate { code } inputs { input } } overLitres underLitres
  zones { minutes overLitres underLitres estimate { code } } notes { code }
} findings { kind }`;

let product: TestApp;
let office: Somebody;
let station: Built;

async function aWateredProperty(controllerIs: Record<string, unknown>, settings: Record<string, unknown>): Promise<Built> {
  const { database } = product;
  const property = await aProperty(database, station.organization_id, { weather_station_id: station.id });
  const meter = await aMeter(database, property, { unit: 'L', digits: 8 });
  const controller = await aController(database, property, controllerIs);
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
  await someSettings(database, controller, { effective_at: '2026-06-20T12:00:00Z', ...settings });
  await aReading(database, meter, { read_at: '2026-07-01T07:00:00Z', register: 100_000 });
  await aReading(database, meter, { read_at: '2026-08-01T07:00:00Z', register: 100_000 + METERED });
  return property;
}

const july = async (property: Built) => {
  await office.send('mutation($id: ID!) { recomputeAccounts(propertyId: $id) { id } }', { id: property.id });
  await product.drain();
  const { data, errors } = await office.send(`query($id: ID!) { property(id: $id) { ${ACCOUNT} } }`, { id: property.id });
  expect(errors).toEqual([]);
  return { ...data.property.account, findings: data.property.findings.map(({ kind }: { kind: string }) => kind) };
};

const DAILY = {
  programs: [
    {
      name: 'A',
      days: 'daily',
      starts: ['05:00'],
      adjustPercent: 100,
      stations: [{ station: 1, minutes: 120, cycles: 1, soakMinutes: 0 }],
    },
  ],
};

beforeAll(async () => {
  product = await startApp();
  const organizationId = await product.organization();
  await product.database.admin(
    `update organization set stands_still_on = '2026-08-05', least_litres = 1000, least_money = 1 where id = $1`,
    [organizationId],
  );
  office = await product.somebody(organizationId, 'office');
  station = await aWeatherStation(product.database, organizationId);
  for (const day of days('2026-04-01', '2026-08-04'))
    await aWeatherDay(product.database, station, {
      day,
      tmax_c: null,
      tmin_c: null,
      given_eto_mm: 8,
      rain_mm: day === '2026-07-10' ? 20 : 0,
    });
});
afterAll(() => product.close());

describe('a controller that sets its own times', () => {
  it('has an estimate of what it gave, which opens no finding about settings', async () => {
    const account = await july(await aWateredProperty({ name: 'Shed' }, { state: 'weather', programs: [] }));
    expect(account.programmed).toMatchObject({
      litres: expect.closeTo(account.needed.litres, 6),
      estimatedShare: expect.closeTo(1, 9),
      reason: null,
    });
    expect(account.settingsGap).toMatchObject({ litres: expect.closeTo(0, 6), estimate: { code: 'settings-from-weather' } });
    expect(account.settingsGap.sdLitres).toBeCloseTo(0.3 * account.needed.litres, 3);
    expect(account.settingsGap.inputs[0]).toMatchObject({ input: 'settingsFromWeather', subjectName: 'Shed' });
    expect(account.zones).toEqual([expect.objectContaining({ minutes: null, estimate: { code: 'settings-from-weather' } })]);
    expect(account.notes).toContainEqual({ code: 'programmed-from-weather' });
    // 90,000 L went through where some 24,000 were needed: more than any timer would be off by.
    expect(account.findings).toEqual(['unexplained use']);
  });
});

describe('a rain sensor', () => {
  it('of known threshold holds back the day of the rain and the next: 29 of 31 days', async () => {
    const account = await july(await aWateredProperty({ rain_sensor: true, rain_sensor_mm: 6 }, DAILY));
    expect(account.programmed.litres).toBeCloseTo(29 * DAY_OF_PROGRAM, 6);
    expect(account.settingsGap.estimate).toBeNull();
    expect(account.unexplainedGap.inputs.map(({ input }: { input: string }) => input)).toContain('rainSensor');
  });

  it('of unknown threshold may have or not: 30 days, and one to either side', async () => {
    const account = await july(await aWateredProperty({ rain_sensor: true, rain_sensor_mm: null }, DAILY));
    expect(account.programmed.litres).toBeCloseTo(30 * DAY_OF_PROGRAM, 6);
    expect(account.programmed.sdLitres).toBeCloseTo(Math.hypot(0.05 * 30 * DAY_OF_PROGRAM, DAY_OF_PROGRAM), 3);
  });

  it('that is not there holds nothing back', async () => {
    const account = await july(await aWateredProperty({ rain_sensor: false, rain_sensor_mm: null }, DAILY));
    expect(account.programmed.litres).toBeCloseTo(31 * DAY_OF_PROGRAM, 6);
  });
});
