import { afterAll, afterEach, beforeAll, expect, it, vi } from 'vitest';
import { planner } from '../../../apps/api/src/features/plans/offers/planner.js';
import {
  aController,
  aWaterSupplier,
  aWateringRule,
  aWeatherDay,
  aWeatherStation,
  aZone,
  type Built,
  someSettings,
} from '../../support/builders.js';
import { type TestApp, startApp } from '../../support/test-app.js';
import { type FieldDay, fieldDay } from '../fieldwork/field-day.js';

// While a plan is made nobody's connection waits for it; what changed meanwhile is planned again before anything is written.

let product: TestApp;
let day: FieldDay;
let property: Built;
let rule: Built;
const controllers: Built[] = [];

beforeAll(async () => {
  product = await startApp();
  day = await fieldDay(product);
  const { database } = product;
  await database.admin(`update organization set stands_still_on = '2026-07-06', least_litres = 1 where id = $1`, [day.organizationId]);
  const supplier = await aWaterSupplier(database, day.organizationId);
  rule = await aWateringRule(database, supplier, { name: 'Stage 1', days_per_week: 5 });
  const station = await aWeatherStation(database, day.organizationId);
  for (let back = 0; back < 120; back += 1) {
    const date = new Date(Date.UTC(2025, 6, 31 - back)).toISOString().slice(0, 10);
    await aWeatherDay(database, station, { day: date, tmax_c: 30 + (back % 5), tmin_c: 13 + (back % 3) });
  }
  property = await day.property({ water_supplier_id: supplier.id, weather_station_id: station.id });
  for (const name of ['A', 'B']) {
    const controller = await aController(database, property, { name, adjust_scope: 'program', minute_step: 1, cycle_soak: true });
    controllers.push(controller);
    await aZone(database, property, { controller_id: controller.id, station: 1, precip_mm_per_h: name === 'A' ? 40 : 38 });
    const stations = [{ station: 1, minutes: 90, cycles: 1, soakMinutes: 0 }];
    const programs = [{ name: 'A', days: 'Mon Wed Fri', starts: ['02:00'], adjustPercent: 100, stations }];
    await someSettings(database, controller, { effective_at: '2026-05-20T12:00:00Z', programs });
  }
});
afterAll(() => product.close());
afterEach(() => vi.restoreAllMocks());

const waiting = async () =>
  (
    await product.database.admin<{ n: number }>(
      `select count(*)::int as n from pg_stat_activity where datname = current_database() and state like 'idle in transaction%'`,
    )
  )[0]!.n;

/** Does something whenever the planner is asked, before it answers. */
function whilePlanning(work: (times: number) => Promise<void>): void {
  const plan = planner.plan.bind(planner);
  let times = 0;
  vi.spyOn(planner, 'plan').mockImplementation(async (input) => {
    times += 1;
    if (!planner.knows({ month: input, year: null })) await work(times);
    return plan(input);
  });
}

const SEASON =
  'mutation($ids: [ID!]!) { orderSeason(month: "2026-07", propertyIds: $ids, what: "For July") { plannedSettings { programs { days } } } }';

it('holds no connection while controllers are planned for a page', async () => {
  const seen: number[] = [];
  whilePlanning(async () => void seen.push(await waiting()));
  const ask =
    'query($id: ID!) { controller(id: $id) { plan(month: "2026-07") { full { result { breaches { rule } } } choices { zoneId } } } }';
  for (const { id } of controllers)
    expect((await day.office.send(ask, { id })).data.controller.plan).toEqual({ full: { result: { breaches: [] } }, choices: [] });
  expect(seen).toEqual([0, 0]);
});

it('plans again what changed while it planned, and writes only that', async () => {
  const seen: number[] = [];
  await product.database.admin('update watering_rule set days_per_week = 4 where id = $1', [rule.id]);
  whilePlanning(async (times) => {
    seen.push(await waiting());
    // The rule is tightened while the first plan is made.
    if (times === 1) await product.database.admin('update watering_rule set days_per_week = 1 where id = $1', [rule.id]);
  });
  const orders = (await day.office.send(SEASON, { ids: [property.id] })).data.orderSeason;
  expect(orders).toHaveLength(2);
  for (const { plannedSettings } of orders) for (const { days } of plannedSettings.programs) expect(days.split(' ')).toHaveLength(1);
  expect(seen.slice(0, 2)).toEqual([0, 0]);
});
