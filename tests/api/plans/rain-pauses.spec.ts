import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { keptByPause } from '../../../apps/api/src/features/plans/rain/kept-by-pause.js';
import {
  aController,
  aProperty,
  aWaterSupplier,
  aWateringRule,
  aWeatherDay,
  aWeatherStation,
  aZone,
  type Built,
  insertRow,
  someSettings,
} from '../../support/builders.js';
import { type TestApp, startApp } from '../../support/test-app.js';
import { assign, close, type FieldDay, fieldDay } from '../fieldwork/field-day.js';

let product: TestApp;
let day: FieldDay;
let wet: Built;
const controllers = new Map<string, Built>();

const TODAY = '2026-07-27';
const STORM = '2026-07-26';
// 500 m² at 40 mm/h is 20 m³/h.
const LITRES_PER_MINUTE = 20_000 / 60;

/**
 * Turf of factor 0.8 under 5 mm/d uses 4 mm a day. Roots of 300 mm hold 51 mm in loam (0.17) and 18 mm in sand (0.06); 0.4 of it may be used
 * (FAO-56, Table 22): 20.4 mm are five days, 7.2 mm one.
 */
const TURF = { plant_factor: 0.8, root_depth_mm: 300, precip_mm_per_h: 40 };
const TUESDAY_AND_THURSDAY = [
  { name: 'A', days: 'Tue Thu', starts: ['02:00'], adjustPercent: 100, stations: [{ station: 1, minutes: 20, cycles: 1, soakMinutes: 0 }] },
];

async function controllerOn(property: Built, name: string, zone: Record<string, unknown>, columns: Record<string, unknown> = {}) {
  const controller = await aController(product.database, property, { name, rain_sensor: false, ...columns });
  controllers.set(name, controller);
  await aZone(product.database, property, { ...TURF, soil: 'loam', controller_id: controller.id, station: 1, ...zone });
  return controller;
}

beforeAll(async () => {
  product = await startApp();
  day = await fieldDay(product);
  await product.database.admin(`update organization set stands_still_on = '${TODAY}' where id = $1`, [day.organizationId]);
  wet = await aWeatherStation(product.database, day.organizationId, { name: 'Wet Bench' });
  const dry = await aWeatherStation(product.database, day.organizationId, { name: 'Dry Bench', latitude: 34 });
  for (let back = 1; back <= 100; back += 1) {
    const date = new Date(Date.UTC(2026, 6, 27 - back)).toISOString().slice(0, 10);
    await aWeatherDay(product.database, wet, { day: date, given_eto_mm: 5, rain_mm: date === STORM ? 60 : 0 });
    await aWeatherDay(product.database, dry, { day: date, given_eto_mm: 5 });
  }
  const supplier = await aWaterSupplier(product.database, day.organizationId);
  await aWateringRule(product.database, supplier, { name: 'After rain', hours_after_rain: 72, rain_mm: 5 });
  const under = await day.property({ weather_station_id: wet.id });
  const turf = await controllerOn(under, 'turf', {});
  await someSettings(product.database, turf, { effective_at: '2026-06-20T12:00:00Z', programs: TUESDAY_AND_THURSDAY });
  await controllerOn(under, 'unknown soil', { soil: null });
  await controllerOn(under, 'with sensor', {}, { rain_sensor: true, rain_sensor_mm: 6 });
  await someSettings(product.database, await controllerOn(under, 'own weather', {}), { state: 'weather' });
  const paused = await controllerOn(under, 'paused', {});
  await insertRow(product.database, 'rain_pause', {
    organization_id: day.organizationId,
    controller_id: paused.id,
    paused_from: '2026-07-26T12:00:00Z',
    paused_until: '2026-08-03T12:00:00Z',
  });
  await controllerOn(await day.property({ weather_station_id: wet.id, water_supplier_id: supplier.id }), 'ruled', { soil: 'sand' });
  await controllerOn(await day.property({ weather_station_id: wet.id }), 'sandy', { soil: 'sand', plant_factor: 1 });
  await controllerOn(await day.property({ weather_station_id: dry.id }), 'dry', {});
  await controllerOn(await day.property(), 'without station', {});
  const other = await product.organization();
  await aController(product.database, await aProperty(product.database, other), { name: 'strange' });
});
afterAll(() => product.close());

const LIST =
  '{ rainPauseList { today withoutWeather controllers { controller { name } rainMm lastRainOn waterAgainOn until days because firstZone keptLitres pausesItself pausedUntil order { id pauseUntil state crew { id } } } } }';
const ORDER =
  'mutation($input: OrderPausesInput!) { orderPauses(input: $input) { id version state kind what estimateMinutes pauseUntil day controllerId plannedSettings { id } } }';

interface Line {
  readonly controller: { readonly name: string };
  readonly until: string;
  readonly waterAgainOn: string;
  readonly keptLitres: number | null;
  readonly order: { readonly id: string } | null;
}
const lines = async (): Promise<Map<string, Line>> => {
  const answer = await day.office.send(LIST);
  expect(answer.errors).toEqual([]);
  return new Map((answer.data.rainPauseList.controllers as Line[]).map((line) => [line.controller.name, line]));
};

describe('the list for the day after a storm', () => {
  it('pauses each controller until its first zone needs water', async () => {
    const found = await lines();
    expect(found.get('turf')).toMatchObject({ rainMm: 60, lastRainOn: STORM, days: 5, because: 'root zone', waterAgainOn: '2026-08-01' });
    // Tuesday and Thursday fall away, twenty minutes each.
    expect(found.get('turf')!.keptLitres).toBeCloseTo(2 * 20 * LITRES_PER_MINUTE, 6);
    expect(found.get('turf')).toMatchObject({ pausesItself: null, pausedUntil: null, order: null });
    expect([...found.keys()].slice(0, 1)).toEqual(['turf']);
  });

  it('bounds what is guessed by common practice, and keeps a rule that forbids for longer', async () => {
    const found = await lines();
    expect(found.get('unknown soil')).toMatchObject({ days: 2, because: 'common practice', waterAgainOn: '2026-07-29', keptLitres: null });
    // Rain until the end of the 26th, and 72 hours.
    expect(found.get('ruled')).toMatchObject({ days: 3, because: 'rule', waterAgainOn: '2026-07-30' });
    expect(found.get('sandy')).toMatchObject({ days: 1, because: 'root zone' });
  });

  it('says which pause without anybody, and leaves out where it was dry or nothing is known', async () => {
    const found = await lines();
    const itself = (name: string) => (found.get(name) as unknown as { pausesItself: string }).pausesItself;
    expect([itself('with sensor'), itself('own weather'), itself('paused')]).toEqual(['rain sensor', 'weather', 'paused']);
    expect(found.get('paused')).toMatchObject({ pausedUntil: '2026-08-03T12:00:00.000Z' });
    expect([...found.keys()].sort()).toEqual(['own weather', 'paused', 'ruled', 'sandy', 'turf', 'unknown soil', 'with sensor']);
    const { data } = await day.office.send(`{ rainPauseList { today withoutWeather } recentRain { name rainMm lastRainOn } }`);
    expect(data.rainPauseList).toEqual({ today: TODAY, withoutWeather: 1 });
    expect(data.recentRain).toEqual([{ name: 'Wet Bench', rainMm: 60, lastRainOn: STORM }]);
  });

  it('is the office’s and not the crew’s', async () => {
    expect((await day.technician.send(LIST)).errors[0]!.extensions.code).toBe('NOT_ALLOWED');
  });
});

describe('giving the pauses out', () => {
  const input = async (change: Record<string, unknown> = {}) => {
    const { until } = (await lines()).get('turf')!;
    return { pauses: [{ controllerId: controllers.get('turf')!.id, until }], crewId: day.crewId, day: TODAY, ...change };
  };

  it('makes one order for each, and done is kept as the pause', async () => {
    const sent = { input: await input() };
    const [order] = (await day.office.send(ORDER, sent)).data.orderPauses;
    expect(order).toMatchObject({ kind: 'adjust', state: 'given out', day: TODAY, estimateMinutes: 5, plannedSettings: null });
    expect(order.pauseUntil).toBe(sent.input.pauses[0]!.until);
    expect((await day.office.send(ORDER, sent)).data.orderPauses).toMatchObject([{ id: order.id }]);
    expect((await lines()).get('turf')).toMatchObject({ order: { id: order.id, crew: { id: day.crewId } } });
    const closed = await close(day.lead, order, { done: true });
    expect(closed.data.closeWorkOrder).toMatchObject({ state: 'done' });
    expect((await lines()).get('turf')).toMatchObject({ pausesItself: 'paused', pausedUntil: order.pauseUntil, order: null });
    const kept = await product.database.admin('select paused_until from rain_pause where controller_id = $1', [order.controllerId]);
    expect(kept).toHaveLength(1);
  });

  it('keeps an order that is there, until the end that is wished now, and none where the pause was left', async () => {
    const sandy = controllers.get('sandy')!;
    const send = async (until: string) =>
      (await day.office.send(ORDER, { input: { pauses: [{ controllerId: sandy.id, until }] } })).data.orderPauses[0];
    const first = await send('2026-07-28T12:00:00.000Z');
    expect(first).toMatchObject({ state: 'open', day: null });
    const second = await send('2026-07-29T12:00:00.000Z');
    expect(second).toMatchObject({ id: first.id, pauseUntil: '2026-07-29T12:00:00.000Z' });
    const given = (await assign(day.office, second, day.crewId, TODAY)).data.assignWorkOrder;
    await close(day.lead, given, { done: false, note: 'gate locked' });
    expect(await product.database.admin('select id from rain_pause where controller_id = $1', [sandy.id])).toEqual([]);
  });

  it('refuses an end that has passed or is no rain pause, a stranger’s controller, and who does not plan', async () => {
    const refused = async (change: Record<string, unknown>, who = day.office) => {
      const answer = await who.send(ORDER, { input: await input(change) });
      return answer.errors[0]?.extensions;
    };
    const controllerId = controllers.get('ruled')!.id;
    expect(await refused({ pauses: [{ controllerId, until: '2026-07-01T00:00:00Z' }] })).toMatchObject({
      code: 'VALUE_REFUSED',
      details: { field: 'pauses[0].until' },
    });
    expect(await refused({ pauses: [{ controllerId, until: '2026-10-01T00:00:00Z' }] })).toMatchObject({ code: 'VALUE_REFUSED' });
    const [strange] = await product.database.admin<{ id: string }>(`select id from controller where name = 'strange'`);
    expect(await refused({ pauses: [{ controllerId: strange!.id, until: '2026-07-29T00:00:00Z' }] })).toMatchObject({ code: 'NOT_FOUND' });
    expect(await refused({}, day.lead)).toMatchObject({ code: 'NOT_ALLOWED' });
  });
});

describe('the water that a pause keeps', () => {
  const traits = {
    ...{ stations: 4, programs: null, startsPerProgram: null, maxMinutes: null, minuteStep: null, adjustScope: 'program' as const },
    ...{ adjustStepPercent: null, maxAdjustPercent: null, monthlyAdjustPercent: null, runsAtOnce: null, cycleSoak: null },
    ...{ rainSensor: false as boolean | null, rainSensorMm: null as number | null },
  };
  const daily = {
    ...{ name: 'A', days: { kind: 'daily' as const }, starts: [120], adjustPercent: 50 },
    stations: [{ station: 1, minutes: 20, cycles: 1, soakMinutes: 0 }],
  };
  const zone = { id: 'z', station: 1, flowLPerMin: 10 } as never;
  const asked = {
    ...{ traits, programs: [daily], pauses: [], zones: [zone], rain: [{ date: STORM, mm: 60 }] },
    ...{ now: '2026-07-27T09:00', until: '2026-08-01T00:00' },
  };

  it('counts the starts from now until the end: not this morning’s', () => {
    // 28, 29, 30 and 31 July: four starts of twenty minutes at half, ten litres a minute.
    expect(keptByPause(asked)).toBeCloseTo(4 * 10 * 10, 6);
  });

  it('leaves out what a pause or the rain sensor holds back already', () => {
    const pauses = [{ from: '2026-07-27T07:00', until: '2026-07-30T00:00' }];
    expect(keptByPause({ ...asked, pauses })).toBeCloseTo(2 * 10 * 10, 6);
    const sensor = { ...asked, rain: [{ date: '2026-07-27', mm: 60 }], traits: { ...traits, rainSensor: true } };
    // Wet on the day of the rain and on the day after it.
    expect(keptByPause(sensor)).toBeCloseTo(3 * 10 * 10, 6);
  });

  it('is not known where the flow is not', () => {
    expect(keptByPause({ ...asked, zones: [{ id: 'z', station: 1, flowLPerMin: null } as never] })).toBeNull();
  });
});
