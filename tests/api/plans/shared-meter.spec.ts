import { afterAll, beforeAll, expect, it } from 'vitest';
import type { PlanGround } from '@rillbook/irrigation/at-the-controller/change-from-found.js';
import { aMeter, type Built } from '../../support/builders.js';
import { type TestApp, startApp } from '../../support/test-app.js';
import { type DryJuly, dryJuly } from './dry-july.js';

// Two controllers behind one meter are planned apart, and never ask together for more than it carries.

let product: TestApp;
let world: DryJuly;
let meter: Built;
let north: Built;
let south: Built;

beforeAll(async () => {
  product = await startApp();
  world = await dryJuly(product);
  meter = await aMeter(product.database, world.property, { max_l_per_min: 1000 });
  north = await world.lawn('North', 40);
  south = await world.lawn('South', 30);
});
afterAll(() => product.close());

const PLAN =
  '{ month reason { code } sharedMeter { by controllerIds flowLPerMin from until } full { kind result { limits unmetLitres } } leastChange { result { limits } } }';
const planOf = async ({ id }: Built) =>
  (await world.day.office.send(`query($id: ID!) { controller(id: $id) { plan(month: "2026-07") ${PLAN} } }`, { id })).data.controller.plan;
const groundOf = async ({ id }: Built) => {
  const answer = await world.day.lead.send('query($id: ID!) { controller(id: $id) { planGround { ground } } }', { id });
  return answer.data.controller.planGround.ground as PlanGround;
};
const carries = (litresPerMin: number | null) =>
  product.database.admin('update meter set max_l_per_min = $2 where id = $1', [meter.id, litresPerMin]);
const largest = ({ zones }: PlanGround) => Math.max(...zones.map(({ flowLPerMin }) => flowLPerMin));

it('parts the flow where the largest zones of both may run at once', async () => {
  await carries(1000);
  const [one, other] = [await planOf(north), await planOf(south)];
  expect(one.sharedMeter).toMatchObject({ by: 'flow', controllerIds: [south.id], from: '22:00', until: '06:00' });
  expect(other.sharedMeter).toMatchObject({ by: 'flow', controllerIds: [north.id] });
  expect(one.sharedMeter.flowLPerMin + other.sharedMeter.flowLPerMin).toBeCloseTo(1000, 6);
  for (const { full, leastChange } of [one, other]) for (const { result } of [full, leastChange]) expect(result.limits).toEqual([]);
  const ground = await groundOf(north);
  expect(one.sharedMeter.flowLPerMin).toBeGreaterThanOrEqual(largest(ground));
  // The phone plans on the spot with the same part.
  expect(ground.flowLimitLPerMin).toBe(one.sharedMeter.flowLPerMin);
});

it('parts the hours where they may not run at once, and nobody has a minute of the other', async () => {
  await carries(largest(await groundOf(north)) + 1);
  const [one, other] = [await planOf(north), await planOf(south)];
  expect([one.sharedMeter.by, other.sharedMeter.by]).toEqual(['hours', 'hours']);
  const hours = [one.sharedMeter, other.sharedMeter].sort((a, b) => (a.from === '22:00' ? -1 : b.from === '22:00' ? 1 : 0));
  expect(hours).toMatchObject([{ from: '22:00', until: hours[1].from }, { until: '06:00' }]);
  for (const { full } of [one, other]) expect(full.result.limits).toEqual([]);
  expect((await groundOf(south)).window).not.toEqual((await groundOf(north)).window);
});

it('shares nothing where nobody knows what the meter carries, or the other waters through none', async () => {
  await carries(null);
  expect((await planOf(north)).sharedMeter).toBeNull();
  await carries(1000);
  await product.database.admin('update zone set unmetered = true where controller_id = $1', [south.id]);
  expect((await planOf(north)).sharedMeter).toBeNull();
  expect((await groundOf(north)).flowLimitLPerMin).toBe(1000);
});
