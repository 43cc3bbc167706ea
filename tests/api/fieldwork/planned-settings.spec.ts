import { afterAll, beforeAll, expect, it } from 'vitest';
import { type Built, aController, aZone, insertRow, someSettings } from '../../support/builders.js';
import { type TestApp, startApp } from '../../support/test-app.js';
import { type FieldDay, fieldDay } from './field-day.js';

let product: TestApp;
let day: FieldDay;

beforeAll(async () => {
  product = await startApp();
  day = await fieldDay(product);
  await product.database.admin(`update organization set stands_still_on = '2026-07-06' where id = $1`, [day.organizationId]);
});
afterAll(() => product.close());

interface Line {
  programs: string[];
  needed: number | null;
  programmed: number | null;
}

const program = (name: string, station: number, adjustPercent: number | null = 100) => ({
  name,
  days: 'Mon Wed Fri',
  starts: ['04:00'],
  adjustPercent,
  stations: [{ station, minutes: 12, cycles: 2, soakMinutes: 30 }],
});

/** A property whose June account has a line for each zone of its one controller. */
async function watered(
  controllerColumns: Record<string, unknown>,
  programs: unknown[],
  lines: readonly Line[],
  daysCovered = 30,
): Promise<{ property: Built; controller: Built }> {
  const property = await day.property();
  const controller = await aController(product.database, property, controllerColumns);
  await someSettings(product.database, controller, { effective_at: '2026-05-20T12:00:00Z', programs });
  const zones = [];
  for (const [at, { programs: named, needed, programmed }] of lines.entries()) {
    const zone = await aZone(product.database, property, { controller_id: controller.id, station: at + 1 });
    zones.push({
      zoneId: zone.id,
      scope: 'metered',
      controllerId: controller.id,
      station: at + 1,
      programs: named,
      neededLitres: needed,
      programmedLitres: programmed,
    });
  }
  const account = { month: '2026-06', firstDate: '2026-06-01', throughDate: '2026-06-30', daysCovered, daysInMonth: 30, zones };
  await insertRow(product.database, 'month_account', {
    organization_id: day.organizationId,
    property_id: property.id,
    month: '2026-06-01',
    through_on: '2026-06-30',
    detail: { account },
    inputs_version: 'test',
  });
  return { property, controller };
}

const CREATE =
  'mutation($input: WorkOrderInput!) { createWorkOrder(input: $input) { ... on WorkOrder { state plannedSettings { controllerId record state effectiveAt programs { name days starts adjustPercent stations { station minutes cycles soakMinutes } } } } } }';
const adjust = async ({ property, controller }: { property: Built; controller: Built }) =>
  (await day.office.send(CREATE, { input: { propertyId: property.id, controllerId: controller.id, kind: 'adjust' } })).data.createWorkOrder;
const percents = async (place: { property: Built; controller: Built }) =>
  (await adjust(place)).plannedSettings?.programs.map(({ name, adjustPercent }: { name: string; adjustPercent: number }) => [
    name,
    adjustPercent,
  ]) ?? null;

it('plans the percent that would have met the need, program by program, and keeps the rest of the settings', async () => {
  // percent = now x need / programmed: A 100 x 6000 / 10000 = 60; B 80 x 3000 / 3000 = 80, as it is
  const place = await watered(
    { adjust_scope: 'program', adjust_step_percent: 5 },
    [program('A', 1), program('B', 2, 80)],
    [
      { programs: ['A'], needed: 6000, programmed: 10_000 },
      { programs: ['B'], needed: 3000, programmed: 3000 },
    ],
  );
  const { state, plannedSettings } = await adjust(place);
  expect(state).toBe('open');
  expect(plannedSettings).toMatchObject({
    controllerId: place.controller.id,
    record: 'planned',
    state: 'on',
    programs: [{ ...program('A', 1, 60) }, { ...program('B', 2, 80) }],
  });
  expect(plannedSettings.effectiveAt).toMatch(/^2026-07-0[67]T/);
  const shown = await day.office.send(
    'query($id: ID!) { property(id: $id) { controllers { presentSettings { record } plannedSettings { record programs { adjustPercent } } } } }',
    { id: place.property.id },
  );
  expect(shown.data.property.controllers).toEqual([
    {
      presentSettings: { record: 'found' },
      plannedSettings: { record: 'planned', programs: [{ adjustPercent: 60 }, { adjustPercent: 80 }] },
    },
  ]);
});

it('rounds to the step of a controller that has one percent for all programs', async () => {
  // 100 x 9000 / 13000 = 69.2, to the nearest 10: 70
  const place = await watered(
    { adjust_scope: 'controller', adjust_step_percent: 10 },
    [program('A', 1), program('B', 2)],
    [
      { programs: ['A'], needed: 6000, programmed: 10_000 },
      { programs: ['B'], needed: 3000, programmed: 3000 },
    ],
  );
  expect(await percents(place)).toEqual([
    ['A', 70],
    ['B', 70],
  ]);
});

it('judges programs together that share a zone, and stops at what the controller can', async () => {
  const place = await watered(
    { adjust_scope: 'program', max_adjust_percent: 150 },
    [program('A', 1), program('B', 2), program('C', 3)],
    [
      { programs: ['A', 'B'], needed: 6000, programmed: 10_000 },
      { programs: ['B'], needed: 2000, programmed: 10_000 },
      { programs: ['C'], needed: 9000, programmed: 3000 },
    ],
  );
  // A and B: 100 x 8000 / 20000 = 40; C: 300, at most 150
  expect(await percents(place)).toEqual([
    ['A', 40],
    ['B', 40],
    ['C', 150],
  ]);
});

it('keeps the order without a plan where a zone is not known, nothing would change, or few days are covered', async () => {
  const known = { programs: ['A'], needed: 6000, programmed: 10_000 };
  expect(await percents(await watered({}, [program('A', 1)], [known, { programs: ['A'], needed: 100, programmed: null }]))).toBeNull();
  expect(await percents(await watered({}, [program('A', 1)], [{ ...known, needed: 10_000 }]))).toBeNull();
  expect(await percents(await watered({}, [program('A', 1)], [known], 6))).toBeNull();
  expect(await percents(await watered({ max_minutes: 10 }, [program('A', 1)], [known]))).toBeNull();
  const property = await day.property();
  expect(await adjust({ property, controller: await aController(product.database, property) })).toEqual({
    state: 'open',
    plannedSettings: null,
  });
});

it('plans on settings that stood through all days of the account, found again as they were or not', async () => {
  const lines = [{ programs: ['A'], needed: 6000, programmed: 10_000 }];
  const same = await watered({}, [program('A', 1)], lines);
  await someSettings(product.database, same.controller, { effective_at: '2026-06-15T16:00:00Z', programs: [program('A', 1)] });
  expect(await percents(same)).toEqual([['A', 60]]);
  const changed = await watered({}, [program('A', 1)], lines);
  await someSettings(product.database, changed.controller, {
    effective_at: '2026-06-15T16:00:00Z',
    record: 'left',
    programs: [program('A', 1, 70)],
  });
  expect(await percents(changed)).toBeNull();
});

it('tells of an order that a newer plan of the same controller overtakes it, unless that is dropped or to be entered only later', async () => {
  const { property, controller } = await watered({}, [program('A', 1)], [{ programs: ['A'], needed: 6000, programmed: 10_000 }]);
  const input = { propertyId: property.id, controllerId: controller.id, kind: 'adjust' };
  const made = async (more: object = {}): Promise<{ id: string; version: number }> =>
    (
      await day.office.send('mutation($input: WorkOrderInput!) { createWorkOrder(input: $input) { ... on WorkOrder { id version } } }', {
        input: { ...input, ...more },
      })
    ).data.createWorkOrder;
  const overtakenBy = async ({ id }: { id: string }) =>
    (await day.office.send('query($id: ID!) { workOrder(id: $id) { overtakenBy { orderId state plannedAt } } }', { id })).data.workOrder
      .overtakenBy;
  const older = await made();
  const later = await made({ notBefore: '2026-08-01' });
  expect(await overtakenBy(older)).toBeNull();
  const newer = await made();
  expect(await overtakenBy(older)).toMatchObject({ orderId: newer.id, state: 'open', plannedAt: expect.stringMatching(/^2026-07-0[67]T/) });
  expect(await overtakenBy(later)).toMatchObject({ orderId: newer.id });
  expect(await overtakenBy(newer)).toBeNull();
  await day.office.send('mutation($id: ID!, $version: Int!) { dropWorkOrder(id: $id, version: $version, why: "twice") { __typename } }', {
    ...newer,
  });
  expect(await overtakenBy(older)).toBeNull();
});
