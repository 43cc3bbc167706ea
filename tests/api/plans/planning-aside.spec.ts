import { afterAll, afterEach, beforeAll, expect, it, vi } from 'vitest';
import { organizationActor } from '../../../apps/api/src/platform/database/actor.js';
import { inTransaction } from '../../../apps/api/src/platform/database/organization-transaction.js';
import { planAhead } from '../../../apps/api/src/features/plans/offers/plan-of-controller.service.js';
import { planner } from '../../../apps/api/src/features/plans/offers/planner.js';
import type { Built } from '../../support/builders.js';
import { type TestApp, startApp } from '../../support/test-app.js';
import { type DryJuly, dryJuly } from './dry-july.js';

// While a plan is made nobody's connection waits for it; what changed meanwhile is planned again before anything is written.

let product: TestApp;
let world: DryJuly;
let controllers: Built[];

beforeAll(async () => {
  product = await startApp();
  world = await dryJuly(product);
  controllers = [await world.lawn('A', 40), await world.lawn('B', 38)];
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
    expect((await world.day.office.send(ask, { id })).data.controller.plan).toEqual({ full: { result: { breaches: [] } }, choices: [] });
  expect(seen).toEqual([0, 0]);
});

it('plans again what changed while it planned, and writes only that', async () => {
  const seen: number[] = [];
  await product.database.admin('update watering_rule set days_per_week = 4 where id = $1', [world.rule.id]);
  whilePlanning(async (times) => {
    seen.push(await waiting());
    // The rule is tightened while the first plan is made.
    if (times === 1) await product.database.admin('update watering_rule set days_per_week = 1 where id = $1', [world.rule.id]);
  });
  const orders = (await world.day.office.send(SEASON, { ids: [world.property.id] })).data.orderSeason;
  expect(orders).toHaveLength(2);
  for (const { plannedSettings } of orders) for (const { days } of plannedSettings.programs) expect(days.split(' ')).toHaveLength(1);
  expect(seen.slice(0, 2)).toEqual([0, 0]);
});

it('reads anew what it planned from, but forgets nothing of a transaction that has written', async () => {
  const within = <T>(work: Parameters<typeof inTransaction<T>>[2]) =>
    inTransaction(product.source, organizationActor(world.day.organizationId, 'import'), work);
  await within(async (tx) => {
    tx.kept.set('what accounts are to be computed again', true);
    await planAhead(tx, [], '2026-07');
    expect(tx.kept.size).toBe(0);
  });
  await within(async (tx) => {
    await tx.query('update organization set least_litres = 2');
    tx.kept.set('what accounts are to be computed again', true);
    await planAhead(tx, [], '2026-07');
    expect([...tx.kept.keys()]).toEqual(['what accounts are to be computed again']);
  });
});

it('gives nothing out where no programs keep all, and says what is not kept and which zone lacks how much', async () => {
  const plan = planner.plan.bind(planner);
  vi.spyOn(planner, 'plan').mockImplementation(async (input) => {
    const { zoneId, station } = input.zones[0]!;
    const because = 'no way was found to lay starts and soaks into the hours' as const;
    const freedBy = 'longer hours, or a second timer beside this one' as const;
    const impossible = [{ zoneId, station, unmetLitres: 900, because, freedBy }];
    return { ...(await plan(input)), refused: ['outside the hours'], impossible };
  });
  const ask =
    'query($id: ID!) { controller(id: $id) { plan(month: "2026-07") { reason { code details } full { kind } leastChange { kind } impossible { station unmetLitres because freedBy } } } }';
  expect((await world.day.office.send(ask, { id: controllers[0]!.id })).data.controller.plan).toEqual({
    reason: { code: 'NOTHING_KEEPS_ALL', details: { broken: ['outside the hours'] } },
    full: null,
    leastChange: null,
    impossible: [
      {
        station: 1,
        unmetLitres: 900,
        because: 'no way was found to lay starts and soaks into the hours',
        freedBy: 'longer hours, or a second timer beside this one',
      },
    ],
  });
  const CREATE =
    'mutation($input: WorkOrderInput!) { createWorkOrder(input: $input) { ... on WorkOrder { state plannedSettings { id } } } }';
  const input = { propertyId: world.property.id, controllerId: controllers[0]!.id, kind: 'adjust', what: 'Set it' };
  expect((await world.day.office.send(CREATE, { input })).data.createWorkOrder).toEqual({ state: 'open', plannedSettings: null });
});
