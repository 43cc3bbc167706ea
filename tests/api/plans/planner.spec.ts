import { Planner } from '../../../apps/api/src/features/plans/offers/planner.js';
import { expect, it } from 'vitest';
import { inventedController } from '../../support/planning/controllers.mjs';

const world = (seed: number) => inventedController(seed, { mostZones: 2, mostPrograms: 1 });

it('keeps what was planned for as long as nothing that it came from has changed', async () => {
  const planner = new Planner();
  const [first, again] = [await planner.plan(world(1)), await planner.plan(world(1))];
  expect(again).toBe(first);
  const other = await planner.plan({ ...world(1), flowLimitLPerMin: 0.5 });
  expect(other).not.toEqual(first);
});

it('keeps no more than it is told to', async () => {
  const planner = new Planner(1);
  const first = await planner.plan(world(1));
  await planner.plan(world(2));
  const again = await planner.plan(world(1));
  expect(again).not.toBe(first);
  expect(again).toEqual(first);
});
