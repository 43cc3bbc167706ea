import type { PlanGround } from '@rillbook/irrigation/at-the-controller/change-from-found.js';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Built } from '../../support/builders.js';
import { startApp, type TestApp } from '../../support/test-app.js';
import { dryJuly, type DryJuly } from './dry-july.js';

// A long line takes minutes to fill, at each start; nothing reaches the plants meanwhile.

let product: TestApp;
let world: DryJuly;
let lawn: Built;

beforeAll(async () => {
  product = await startApp();
  world = await dryJuly(product);
  lawn = await world.lawn('Slope', 40);
});
afterAll(() => product.close());

const PLAN = '{ reason { code } full { result { usedLitres neededLitres unmetLitres wastedLitres } } }';
const planned = async () => {
  const { office, lead } = world.day;
  const plan = await office.send(`query($id: ID!) { controller(id: $id) { plan(month: "2026-07") ${PLAN} } }`, { id: lawn.id });
  const ground = await lead.send('query($id: ID!) { controller(id: $id) { planGround { ground } } }', { id: lawn.id });
  return {
    result: plan.data.controller.plan.full.result,
    ground: ground.data.controller.planGround.ground as PlanGround,
  };
};
const fills = (minutes: number | null) =>
  product.database.admin('update zone set fill_minutes = $2 where controller_id = $1', [lawn.id, minutes]);

it('runs longer where somebody has said how long the line takes to fill, and the phone plans with the same minutes', async () => {
  const unsaid = await planned();
  expect(unsaid.ground.zones.map(({ fillMinutes }) => fillMinutes)).toEqual([0]);
  await fills(4);
  const said = await planned();
  expect(said.ground.zones.map(({ fillMinutes }) => fillMinutes)).toEqual([4]);
  // What fills the line is used and wasted, and as much reaches the plants as before.
  expect(said.result.wastedLitres).toBeGreaterThan(unsaid.result.wastedLitres);
  expect(said.result.usedLitres).toBeGreaterThan(unsaid.result.usedLitres);
  expect(said.result.unmetLitres).toBeLessThan(unsaid.result.unmetLitres + 0.02 * unsaid.result.neededLitres);
});
