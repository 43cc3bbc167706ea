import { changeFromFound, type PlanGround } from '@rillbook/irrigation/at-the-controller/change-from-found.js';
import { programInWords } from '@rillbook/irrigation/at-the-controller/program-in-words.js';
import type { Program } from '@rillbook/irrigation/settings/settings-fact.js';
import { afterAll, afterEach, beforeAll, expect, it, vi } from 'vitest';
import { planner } from '../../../apps/api/src/features/plans/offers/planner.js';
import { aController, aZone, type Built } from '../../support/builders.js';
import { type TestApp, startApp } from '../../support/test-app.js';
import { type DryJuly, dryJuly } from './dry-july.js';

// What a crew is sent with from a finding: one of the two offers of the month's plan.

let product: TestApp;
let world: DryJuly;

beforeAll(async () => {
  product = await startApp();
  world = await dryJuly(product);
});
afterAll(() => product.close());
afterEach(() => vi.restoreAllMocks());

const PROGRAMS = 'programs { name days starts adjustPercent stations { station minutes cycles soakMinutes } }';
const ACCEPT = `mutation($id: ID!, $input: WorkOrderInput!) { acceptFinding(id: $id, version: 1, input: $input) {
  ... on FindingAccepted { workOrder { state plannedSettings { record state ${PROGRAMS} } } } } }`;
const PLAN = `query($id: ID!) { controller(id: $id) { plan(month: "2026-07") { leastChange { kind ${PROGRAMS} } full { kind ${PROGRAMS} } } } }`;
const GROUND = 'query($id: ID!) { property(id: $id) { controllers { id planGround { ground } } } }';

async function accept(controller: Built, settings: unknown = undefined) {
  const { id } = await world.day.finding(world.property.id, { kind: 'over-programmed', controller_id: controller.id });
  const input = { propertyId: world.property.id, kind: 'adjust', what: 'Set it', settings };
  return world.day.office.send(ACCEPT, { id, input });
}
const given = async (controller: Built, settings: unknown = undefined) =>
  (await accept(controller, settings)).data.acceptFinding.workOrder.plannedSettings;
const planOf = async ({ id }: Built) => (await world.day.office.send(PLAN, { id })).data.controller.plan;

it('is the least change of the plan, which is what the phone would reckon on what is set', async () => {
  const lawn = await world.lawn('least', 40);
  const plan = await planOf(lawn);
  const planned = await given(lawn);
  expect(planned).toEqual({ record: 'planned', state: 'on', programs: plan.leastChange.programs });
  expect(await given(lawn, { offer: 'least change', month: '2026-07' })).toEqual(planned);
  const { controllers } = (await world.day.lead.send(GROUND, { id: world.property.id })).data.property;
  const ground = controllers.find(({ id }: { id: string }) => id === lawn.id)?.planGround.ground as PlanGround;
  const set: Program = {
    name: 'A',
    days: { kind: 'weekdays', weekdays: ['Mon', 'Wed', 'Fri'] },
    starts: [0],
    adjustPercent: 100,
    stations: [{ station: 1, minutes: 90, cycles: 3, soakMinutes: 30 }],
  };
  const onThePhone = changeFromFound(ground, [set]);
  expect(onThePhone.kind === 'enter' && onThePhone.offer.programs.map(programInWords)).toEqual(planned.programs);
});

it('is the full program where that is wished, or where no percent keeps all', async () => {
  const lawn = await world.lawn('full', 41);
  const { full, leastChange } = await planOf(lawn);
  expect(full.programs).not.toEqual(leastChange.programs);
  expect((await given(lawn, { offer: 'full program', month: '2026-07' })).programs).toEqual(full.programs);
  // A timer that cannot run as long as it is set to, and whose percent only goes up.
  const stuck = await world.lawn('stuck', 42, { max_minutes: 60, adjust_step_percent: 100 });
  const plan = await planOf(stuck);
  expect(plan.leastChange).toBeNull();
  expect((await given(stuck)).programs).toEqual(plan.full.programs);
});

it('replaces nothing that nobody knows, unless the full program is wished', async () => {
  const blank = await aController(product.database, world.property, { name: 'blank', adjust_scope: 'program', minute_step: 1 });
  await aZone(product.database, world.property, { controller_id: blank.id, station: 1, soil: 'loam', precip_mm_per_h: 20 });
  expect(await given(blank)).toBeNull();
  expect((await given(blank, { offer: 'full program', month: '2026-07' })).programs).not.toEqual([]);
});

it('refuses an offer that there is none of', async () => {
  const lawn = await world.lawn('refused', 43);
  const problem = async (settings: unknown) => (await accept(lawn, settings)).errors[0]?.extensions;
  expect(await problem({ offer: 'the best', month: '2026-07' })).toMatchObject({
    code: 'VALUE_REFUSED',
    details: { field: 'settings.offer', found: 'the best' },
  });
  expect(await problem({ offer: 'full program', month: '2026-10' })).toMatchObject({
    code: 'VALUE_REFUSED',
    details: { expected: 'an offer of 2026-10, which has no plan: NO_WEATHER' },
  });
});

it('keeps no connection while it plans, and enters what holds when it is written', async () => {
  const lawn = await world.lawn('meanwhile', 44);
  const plan = planner.plan.bind(planner);
  const waiting: number[] = [];
  vi.spyOn(planner, 'plan').mockImplementation(async (input) => {
    if (!planner.knows({ month: input, year: null })) {
      const [row] = await product.database.admin<{ n: number }>(
        `select count(*)::int as n from pg_stat_activity where datname = current_database() and state like 'idle in transaction%'`,
      );
      waiting.push(row!.n);
      await product.database.admin('update watering_rule set days_per_week = 2 where id = $1', [world.rule.id]);
    }
    return plan(input);
  });
  const { programs } = await given(lawn);
  // Once before anything is written; the second question is that of the rule that came meanwhile.
  expect(waiting).toHaveLength(2);
  expect(waiting[0]).toBe(0);
  for (const { days } of programs) expect(days.split(' ').length).toBeLessThanOrEqual(2);
});
