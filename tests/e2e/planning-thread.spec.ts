import { execFileSync } from 'node:child_process';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { planController } from '@rillbook/irrigation/planning/offers/plan-controller.js';
import { expect, it } from 'vitest';
import { inventedController } from '../support/planning/controllers.mjs';

const built = pathToFileURL(path.join(import.meta.dirname, '../../apps/api/dist/features/plans/offers/planner.js')).href;

// The built planner in a process of its own: turns of its loop while a plan is made, the plan, and what follows a question that fails.
const script = (world: unknown) => `
  const { Planner } = await import(${JSON.stringify(built)});
  const planner = new Planner();
  const world = ${JSON.stringify(world)};
  let [turns, isPlanned] = [0, false];
  const turn = () => { turns += 1; if (!isPlanned) setImmediate(turn); };
  setImmediate(turn);
  const plan = await planner.plan(world);
  isPlanned = true;
  const after = await Promise.allSettled([planner.plan({ ...world, zones: null }), planner.plan({ ...world, present: null })]);
  console.log(JSON.stringify({ turns, plan, after: after.map(({ status }) => status) }));
`;

it('serves others while a plan is made, says what fails, and goes on', () => {
  const world = inventedController(30, { mostZones: 8, mostPrograms: 3 });
  const told = execFileSync(process.execPath, ['-e', `void (async () => {${script(world)}})()`], { encoding: 'utf8' });
  const { turns, plan, after } = JSON.parse(told) as { turns: number; plan: unknown; after: string[] };
  expect(turns).toBeGreaterThan(10);
  expect(plan).toEqual(JSON.parse(JSON.stringify(planController(world))));
  expect(after).toEqual(['rejected', 'fulfilled']);
});
