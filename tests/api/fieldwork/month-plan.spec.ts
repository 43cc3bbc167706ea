import { randomUUID } from 'node:crypto';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import pg from 'pg';
import { afterAll, afterEach, beforeAll, beforeEach, expect, it } from 'vitest';
import { type TestApp, startApp } from '../../support/test-app.js';
import { type FieldDay, assign, codeOf, fieldDay } from './field-day.js';

let product: TestApp;
let day: FieldDay;

beforeAll(async () => {
  product = await startApp();
});
beforeEach(async () => {
  day = await fieldDay(product);
  // Monday, 6 July 2026.
  await product.database.admin(`update organization set stands_still_on = '2026-07-06' where id = $1`, [day.organizationId]);
  await product.database.admin('update crew set start_latitude = 38, start_longitude = -120 where organization_id = $1', [
    day.organizationId,
  ]);
});
afterEach(() => {
  delete process.env['ROUTING_SERVER'];
});
afterAll(() => product.close());

const PLAN = `query($month: Month!) { monthPlan(month: $month) {
  days { crew { id } day works stops { stop { id version position locked property { id } workOrders { id } } driveMinutes beginMinute endMinute lateMinutes visited visitDueOn }
    leavesMinute homeMinute driveMinutes workMinutes mostMinutes says { code details } }
  unplaced { id property { id } orders { id } visitDueOn minutes reason { code details } }
  travel { source factor serverFault } pace { factor visits } latest { id moved unplaced undoneAt } } }`;
const RUN = '{ id moved unplaced undoneAt }';

interface Day {
  readonly crew: { readonly id: string };
  readonly day: string;
  readonly stops: readonly {
    readonly stop: { readonly id: string; readonly version: number; readonly property: { readonly id: string } };
  }[];
}

const shown = async (month = '2026-07') => (await day.office.send(PLAN, { month })).data.monthPlan;
const plan = (month = '2026-07') => day.office.send(`mutation($month: Month!) { planMonth(month: $month) ${RUN} }`, { month });
const undo = (id: string) => day.office.send(`mutation($id: ID!) { undoPlan(id: $id) ${RUN} }`, { id });
const terms = (propertyId: string, input: Record<string, unknown>, version: number | null = null) =>
  day.office.send(
    'mutation($id: ID!, $version: Int, $input: VisitTermsInput!) { setVisitTerms(propertyId: $id, version: $version, input: $input) { __typename ... on VisitTerms { version everyDays hours { kind fromMinute } } } }',
    { id: propertyId, version, input },
  );
const carry = (stop: { id: string; version: number }, to: Record<string, unknown>) =>
  day.office.send(
    'mutation($id: ID!, $version: Int!, $to: CarryInput!) { carryStop(id: $id, version: $version, to: $to) { id version locked position } }',
    {
      id: stop.id,
      version: stop.version,
      to,
    },
  );
const near = (at: number) => day.property({ latitude: 38 + at / 100, longitude: -120 });
const whereIs = (month: { days: readonly Day[] }, propertyId: string) =>
  month.days.flatMap((one) =>
    one.stops.filter(({ stop }) => stop.property.id === propertyId).map(({ stop }) => ({ day: one.day, crewId: one.crew.id, stop })),
  );

it('gives open work and due visits a crew and a day from tomorrow on, and takes it all back', async () => {
  const [busy, weekly, nowhere] = [await near(1), await near(2), await day.property()];
  const order = await day.order({ propertyId: busy.id, kind: 'repair', dueOn: '2026-07-08' });
  const lost = await day.order({ propertyId: nowhere.id });
  expect((await terms(weekly.id, { everyDays: 7, visitMinutes: 45 })).data.setVisitTerms).toMatchObject({
    __typename: 'VisitTerms',
    everyDays: 7,
  });
  const before = await shown();
  // Nobody was ever there: visits are due today, and then on 13, 20 and 27 July.
  expect(before.unplaced.flatMap(({ visitDueOn }: { visitDueOn: string | null }) => visitDueOn ?? [])).toEqual([
    '2026-07-06',
    '2026-07-13',
    '2026-07-20',
    '2026-07-27',
  ]);
  expect(before).toMatchObject({ latest: null, travel: { source: 'straight-line estimate', factor: 1.3, serverFault: null } });
  expect(before.unplaced[0].reason.code).toBe('notPlannedYet');
  const made = (await plan()).data.planMonth;
  // Planned from 7 July: visits are due on 7, 14, 21 and 28 July.
  expect(made).toMatchObject({ moved: 5, unplaced: 1, undoneAt: null });
  const after = await shown();
  const [repair] = whereIs(after, busy.id);
  expect(['2026-07-07', '2026-07-08']).toContain(repair!.day);
  expect(repair!.stop).toMatchObject({ locked: false, workOrders: [{ id: order.id }] });
  expect(whereIs(after, weekly.id)).toHaveLength(4);
  expect(after.unplaced.filter(({ visitDueOn }: { visitDueOn: string | null }) => visitDueOn)).toEqual([]);
  expect(whereIs(after, weekly.id).every(({ day: date }) => date > '2026-07-06')).toBe(true);
  expect(after.unplaced.find(({ property }: { property: { id: string } }) => property.id === nowhere.id)).toMatchObject({
    orders: [{ id: lost.id }],
    reason: { code: 'noPosition' },
  });
  const [first] = after.days.filter(({ stops }: Day) => stops.length > 0);
  expect(first.homeMinute - first.leavesMinute).toBe(first.driveMinutes + first.workMinutes);
  expect((await undo(made.id)).data.undoPlan.undoneAt).not.toBeNull();
  const undone = await shown();
  expect(undone.days.flatMap(({ stops }: Day) => stops)).toEqual([]);
  expect(undone.unplaced).toHaveLength(before.unplaced.length);
  expect((await undo(made.id)).data.undoPlan).toEqual((await undo(made.id)).data.undoPlan);
  expect(await shown()).toEqual(undone);
});

it('a planning sent twice at once under its id is one, and is told again when something is left to move', async () => {
  const { id: propertyId } = await near(1);
  await day.order({ propertyId, dueOn: '2026-07-08' });
  const id = randomUUID();
  const send = () =>
    day.office.send(`mutation($month: Month!, $id: ID!) { planMonth(month: $month, deviceRecordId: $id) ${RUN} }`, {
      month: '2026-07',
      id,
    });
  const [one, other] = await Promise.all([send(), send()]);
  expect(one.data.planMonth).toMatchObject({ id, moved: expect.any(Number) });
  expect(other.data.planMonth).toEqual(one.data.planMonth);
  const { id: next } = await near(2);
  await day.order({ propertyId: next, dueOn: '2026-07-08' });
  expect((await send()).data.planMonth).toEqual(one.data.planMonth);
  expect(whereIs(await shown(), propertyId)).toHaveLength(1);
  expect(whereIs(await shown(), next)).toHaveLength(0);
});

it('plans again after a lost answer without moving anything, and what the first planning moved can still be taken back', async () => {
  const { id: propertyId } = await near(1);
  await day.order({ propertyId, dueOn: '2026-07-08' });
  const made = (await plan()).data.planMonth;
  const [placed] = whereIs(await shown(), propertyId);
  expect((await plan()).data.planMonth).toEqual({ ...made, moved: 0 });
  const month = await shown();
  expect(whereIs(month, propertyId)).toEqual([placed]);
  expect(month.latest).toEqual(made);
  await undo(made.id);
  expect(whereIs(await shown(), propertyId)).toEqual([]);
});

it('keeps locked stops, skills and hours, and says why what is left out is left out', async () => {
  const [held, school, electric] = [await near(1), await near(3), await near(4)];
  const order = await day.given({ propertyId: held.id }, '2026-07-20');
  const [stop] = whereIs(await shown(), held.id);
  expect((await carry(stop!.stop, { crewId: day.otherCrewId, day: '2026-07-21', position: 1, locked: true })).data.carryStop).toMatchObject(
    { locked: true },
  );
  // School hours: nobody may work from 7:00 to 15:00; the crews' day ends at 15:30.
  await terms(school.id, { hours: [{ kind: 'closed', weekdays: [1, 2, 3, 4, 5], fromMinute: 420, untilMinute: 900 }] });
  await day.order({ propertyId: school.id, estimateMinutes: 60 });
  await day.order({ propertyId: electric.id, skills: ['Electrician '] });
  expect((await plan()).data.planMonth).toMatchObject({ unplaced: 2 });
  const month = await shown();
  expect(whereIs(month, held.id)).toMatchObject([{ day: '2026-07-21', crewId: day.otherCrewId, stop: { workOrders: [{ id: order.id }] } }]);
  const why = new Map(month.unplaced.map(({ property, reason }: { property: { id: string }; reason: object }) => [property.id, reason]));
  expect(why.get(school.id)).toMatchObject({ code: 'neverOpen' });
  expect(why.get(electric.id)).toEqual({ code: 'noSkill', details: { skills: ['electrician'] } });
  await product.database.admin(`update crew set skills = '{electrician}' where id = $1`, [day.crewId]);
  await plan();
  expect(whereIs(await shown(), electric.id)).toMatchObject([{ crewId: day.crewId }]);
});

it('carries a stop by hand as one deed, and not one that was visited', async () => {
  const property = await near(1);
  await day.given({ propertyId: property.id }, '2026-07-07');
  const [from] = whereIs(await shown(), property.id);
  const carried = (await carry(from!.stop, { crewId: day.crewId, day: '2026-07-09', position: 9, locked: false })).data.carryStop;
  expect(whereIs(await shown(), property.id)).toMatchObject([
    { day: '2026-07-09', stop: { id: carried.id, position: 1, workOrders: [{}] } },
  ]);
  const meanwhile = { code: 'STOP_MOVED_MEANWHILE', details: { changedBy: 'The office' } };
  for (const stale of [from!.stop, { ...carried, version: 99 }])
    expect((await carry(stale, { crewId: day.crewId, day: '2026-07-10', position: 1, locked: false })).errors[0]!.extensions).toMatchObject(
      meanwhile,
    );
  await product.database.admin(
    `insert into visit (organization_id, property_id, stop_id, crew_id, arrived_at) values ($1, $2, $3, $4, '2026-07-09T16:00:00Z')`,
    [day.organizationId, property.id, carried.id, day.crewId],
  );
  expect(codeOf(await carry(carried, { crewId: day.crewId, day: '2026-07-10', position: 1, locked: false }))).toBe('STOP_VISITED');
});

it('carries and locks a stop only when no planning is under way, which would not know of it', async () => {
  const property = await near(1);
  await day.given({ propertyId: property.id }, '2026-07-14');
  const [there] = whereIs(await shown(), property.id);
  const planner = new pg.Client({ connectionString: product.database.adminUrl });
  await planner.connect();
  try {
    await planner.query('begin');
    await planner.query('select pg_advisory_xact_lock(hashtext($1))', [`plan the routes of ${day.organizationId}`]);
    let isPlanned = false;
    const to = { crewId: there!.crewId, day: there!.day, position: 1, locked: true };
    const lock = carry(there!.stop, to).then((answer: object) => ({ ...answer, isPlanned }));
    await new Promise((resolve) => setTimeout(resolve, 700));
    isPlanned = true;
    await planner.query('commit');
    expect(await lock).toMatchObject({ isPlanned: true, data: { carryStop: { id: there!.stop.id, locked: true } } });
  } finally {
    await planner.end();
  }
});

it('leaves today to the crews, and counts a stop of today as the visit that it will be', async () => {
  const property = await near(1);
  await terms(property.id, { everyDays: 20 });
  await day.given({ propertyId: property.id }, '2026-07-06');
  // The next one is due on 26 July.
  expect((await plan()).data.planMonth).toMatchObject({ moved: 1, unplaced: 0 });
  const [first, next, ...more] = whereIs(await shown(), property.id);
  expect([first!.day, more]).toEqual(['2026-07-06', []]);
  expect(next!.day > '2026-07-15').toBe(true);
});

it('plans again what was left at a stop of a day that is over, however old, also where somebody had come', async () => {
  const [came, old, half] = [await near(1), await near(2), await near(3)];
  const left = await day.given({ propertyId: came.id, kind: 'repair' }, '2026-06-22');
  const ancient = await day.given({ propertyId: old.id }, '2025-01-01');
  const shared = [await day.given({ propertyId: half.id }, '2026-07-01'), await day.given({ propertyId: half.id }, '2026-07-01')];
  await product.database.admin(`update work_order set state = 'done' where id = $1`, [shared[0]!.id]);
  for (const [property, order] of [
    [came, left],
    [half, shared[1]!],
  ] as const)
    await product.database.admin(
      `insert into visit (organization_id, property_id, stop_id, crew_id, arrived_at) values ($1, $2, $3, $4, '2026-06-22T16:00:00Z')`,
      [day.organizationId, property.id, order.stopId, day.crewId],
    );
  const before = await shown();
  expect(before.unplaced.map(({ orders, reason }: { orders: { id: string }[]; reason: object }) => [orders, reason])).toEqual([
    [[{ id: ancient.id }], { code: 'missed', details: { day: '2025-01-01' } }],
    [[{ id: left.id }], { code: 'missed', details: { day: '2026-06-22' } }],
  ]);
  expect((await plan()).data.planMonth).toMatchObject({ moved: 3, unplaced: 0 });
  const after = await shown();
  expect(after.unplaced).toEqual([]);
  const comes = (propertyId: string) => whereIs(after, propertyId).filter((one) => one.day > '2026-07-06');
  expect(comes(came.id)).toMatchObject([{ stop: { workOrders: [{ id: left.id }] } }]);
  expect(comes(old.id)).toMatchObject([{ stop: { workOrders: [{ id: ancient.id }] } }]);
  // What was done there stays on its day.
  expect(whereIs(after, half.id).map((one) => [one.day > '2026-07-06', (one.stop as never as { workOrders: unknown }).workOrders])).toEqual(
    [
      [false, [{ id: shared[0]!.id }]],
      [true, [{ id: shared[1]!.id }]],
    ],
  );
});

it('gives no work to a day that is over, carries what was left there to a coming one, and back', async () => {
  const property = await near(1);
  const left = await day.given({ propertyId: property.id }, '2026-07-03');
  await product.database.admin(
    `insert into visit (organization_id, property_id, stop_id, crew_id, arrived_at) values ($1, $2, $3, $4, '2026-07-03T16:00:00Z')`,
    [day.organizationId, property.id, left.stopId, day.crewId],
  );
  const [past] = whereIs(await shown(), property.id);
  const to = (date: string) => ({ crewId: day.crewId, day: date, position: 1, locked: false });
  const fieldOf = (answer: { errors: { extensions: { details: { field: string } } }[] }) => answer.errors[0]!.extensions.details.field;
  expect(fieldOf((await carry(past!.stop, to('2025-01-01'))) as never)).toBe('day');
  const carried = (await carry(past!.stop, to('2026-07-07'))).data.carryStop;
  expect(whereIs(await shown(), property.id)).toMatchObject([
    { day: '2026-07-03', stop: { workOrders: [] } },
    { day: '2026-07-07', stop: { workOrders: [{ id: left.id }] } },
  ]);
  expect((await carry(carried, to('2026-07-03'))).data.carryStop).toMatchObject({ id: left.stopId });
  const other = await day.order({ propertyId: (await near(2)).id });
  expect(fieldOf((await assign(day.office, other, day.crewId, '2026-07-05')) as never)).toBe('day');
  const place = (date: string) =>
    day.office.send('mutation($month: Month!, $to: CarryInput!) { placeItem(month: $month, itemId: "orders x", to: $to) { id } }', {
      month: '2026-07',
      to: to(date),
    });
  expect(fieldOf((await place('2026-07-05')) as never)).toBe('day');
});

it('counts a crew’s reading of a meter as having been there', async () => {
  const property = await near(1);
  await terms(property.id, { everyDays: 14 });
  const [meter] = await product.database.admin<{ id: string }>(
    `insert into meter (organization_id, id, property_id, name, unit) values ($1, gen_random_uuid(), $2, 'Irrigation', 'gal') returning id`,
    [day.organizationId, property.id],
  );
  const read = (at: string, source: string) =>
    product.database.admin(
      `insert into reading (organization_id, id, meter_id, read_at, register, source) values ($1, gen_random_uuid(), $2, $3, 1, $4)`,
      [day.organizationId, meter!.id, at, source],
    );
  await read('2026-07-01T18:00:00Z', 'crew');
  await read('2026-07-05T18:00:00Z', 'bill');
  const due = (await shown()).unplaced.map(({ visitDueOn }: { visitDueOn: string | null }) => visitDueOn);
  expect(due).toEqual(['2026-07-15', '2026-07-29']);
});

it('replans only what is left of a broken day', async () => {
  const [done, late, other] = [await near(1), await near(2), await near(3)];
  for (const property of [done, late]) await day.given({ propertyId: property.id, estimateMinutes: 240 }, '2026-07-06');
  await day.given({ propertyId: other.id, estimateMinutes: 60 }, '2026-07-08');
  const [visited] = whereIs(await shown(), done.id);
  await product.database.admin(
    `insert into visit (organization_id, property_id, stop_id, crew_id, arrived_at) values ($1, $2, $3, $4, '2026-07-06T15:00:00Z')`,
    [day.organizationId, done.id, visited!.stop.id, day.crewId],
  );
  const replan = (minute: number | null, id: string | null = null) =>
    day.office.send(
      `mutation($crew: ID!, $minute: Int, $id: ID) { replanDay(crewId: $crew, minute: $minute, deviceRecordId: $id) ${RUN} }`,
      {
        crew: day.crewId,
        minute,
        id,
      },
    );
  // At 14:00 four hours of work no longer fit into today, for neither crew.
  const again = randomUUID();
  const first = (await replan(840, again)).data.replanDay;
  expect(first).toMatchObject({ id: again, moved: 1, unplaced: 0 });
  expect((await replan(840, again)).data.replanDay).toEqual(first);
  const month = await shown();
  expect(whereIs(month, done.id)).toMatchObject([{ day: '2026-07-06' }]);
  // The crew is still there: its work is expected to take the four hours from its coming.
  const [shownDone] = month.days.flatMap((one: Day) => one.stops).filter(({ visited: was }: { visited: boolean }) => was);
  expect(shownDone.endMinute - shownDone.beginMinute).toBe(240);
  expect(whereIs(month, other.id)).toMatchObject([{ day: '2026-07-08' }]);
  expect(whereIs(month, late.id)[0]!.day > '2026-07-06').toBe(true);
  expect(codeOf(await replan(9999))).toBe('VALUE_REFUSED');
  // From now on: nothing of today is left.
  expect((await replan(null)).data.replanDay).toMatchObject({ moved: 0, unplaced: 0 });
});

it('leaves what the month’s plan found of other work when a day is replanned, also when that is taken back', async () => {
  const [first, second, nowhere] = [await near(1), await near(2), await day.property()];
  await day.order({ propertyId: nowhere.id });
  expect((await plan()).data.planMonth).toMatchObject({ moved: 0, unplaced: 1 });
  for (const property of [first, second]) await day.given({ propertyId: property.id, estimateMinutes: 240 }, '2026-07-06');
  const replan = async () =>
    (await day.office.send(`mutation($crew: ID!) { replanDay(crewId: $crew, minute: 840) ${RUN} }`, { crew: day.crewId })).data.replanDay;
  const why = async () => (await shown()).unplaced.map(({ reason }: { reason: { code: string } }) => reason.code);
  const made = await replan();
  // What is counted is what was planned: the rest of this day.
  expect(made).toMatchObject({ moved: 2, unplaced: 0 });
  expect(await why()).toEqual(['noPosition']);
  expect(await replan()).toMatchObject({ moved: 0, unplaced: 0 });
  expect(await why()).toEqual(['noPosition']);
  await undo(made.id);
  expect(await why()).toEqual(['noPosition']);
});

it('asks the office’s own routing server where one is named, and says so when it fails', async () => {
  const asked: string[] = [];
  const server: Server = createServer((request, response) => {
    asked.push(request.url ?? '');
    const url = new URL(request.url ?? '', 'http://local');
    const rows = url.searchParams.get('sources')!.split(';').length;
    const row = url.searchParams
      .get('destinations')!
      .split(';')
      .map(() => 600);
    response.end(JSON.stringify({ durations: Array.from({ length: rows }, () => row) }));
  });
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  const base = `http://127.0.0.1:${(server.address() as AddressInfo).port}/table/v1/driving`;
  await day.given({ propertyId: (await near(5)).id }, '2026-07-07');
  process.env['ROUTING_SERVER'] = base;
  const month = await shown();
  expect(month.travel).toEqual({ source: 'routing server', factor: null, serverFault: null });
  expect(month.days.find(({ stops }: Day) => stops.length > 0)).toMatchObject({ driveMinutes: 20 });
  expect(decodeURIComponent(asked[0]!)).toContain('/table/v1/driving/-120.00000,38.00000;');
  await new Promise((closed) => server.close(closed));
  await day.given({ propertyId: (await near(6)).id }, '2026-07-07');
  expect((await shown()).travel).toMatchObject({ source: 'straight-line estimate', factor: 1.3, serverFault: 'not reached' });
});

it('refuses terms, crews and months that cannot be', async () => {
  const property = await near(1);
  const refused = async (input: Record<string, unknown>) => (await terms(property.id, input)).errors[0]!.extensions.details.field;
  expect(await refused({ everyDays: 0 })).toBe('everyDays');
  expect(await refused({ hours: [{ kind: 'open', weekdays: [8], fromMinute: 0, untilMinute: 60 }] })).toBe('hours[0].weekdays');
  expect(await refused({ hours: [{ kind: 'open', weekdays: [1], fromMinute: 60, untilMinute: 60 }] })).toBe('hours[0].untilMinute');
  await terms(property.id, { everyDays: 14 });
  expect((await terms(property.id, { everyDays: 7 })).data.setVisitTerms.__typename).toBe('ChangedMeanwhile');
  expect((await terms(property.id, { everyDays: 7 }, 1)).data.setVisitTerms).toMatchObject({ version: 2, everyDays: 7 });
  expect(codeOf(await plan('2026-06'))).toBe('VALUE_REFUSED');
  const crew = (input: Record<string, unknown>) =>
    day.office.send('mutation($input: CrewInput!) { createCrew(input: $input) { ... on Crew { skills workingDays breakMinutes } } }', {
      input,
    });
  expect(codeOf(await crew({ name: 'Far', startLatitude: 38 }))).toBe('VALUE_REFUSED');
  expect(codeOf(await crew({ name: 'Far', workingDays: [0] }))).toBe('VALUE_REFUSED');
  expect((await crew({ name: 'Far', skills: ['Drip', 'drip '], workingDays: [6, 1] })).data.createCrew).toEqual({
    skills: ['drip'],
    workingDays: [1, 6],
    breakMinutes: 30,
  });
});

it('plans no work before its day, and lets nothing wait with it', async () => {
  const { id: propertyId } = await near(1);
  const soon = await day.order({ propertyId, kind: 'repair' });
  const later = await day.order({ propertyId, kind: 'adjust', notBefore: '2026-07-29' });
  const cannot = await day.office.send('mutation($input: WorkOrderInput!) { createWorkOrder(input: $input) { __typename } }', {
    input: { propertyId, kind: 'read', notBefore: '2026-07-29', dueOn: '2026-07-28' },
  });
  expect(cannot.errors[0]!.extensions).toMatchObject({ code: 'VALUE_REFUSED', details: { field: 'dueOn' } });
  expect((await plan()).data.planMonth).toMatchObject({ unplaced: 0 });
  const dayOf = async (id: string) =>
    (
      await product.database.admin(
        'select route.day::text from route join stop on stop.route_id = route.id join work_order on work_order.stop_id = stop.id where work_order.id = $1',
        [id],
      )
    )[0]!['day'];
  expect(await dayOf(soon.id)).toBe('2026-07-07');
  expect(await dayOf(later.id)).toBe('2026-07-29');
  // Planned anew from later on, it still keeps to its day.
  await product.database.admin(`update organization set stands_still_on = '2026-07-20' where id = $1`, [day.organizationId]);
  await plan();
  expect(await dayOf(later.id)).toBe('2026-07-29');
});
