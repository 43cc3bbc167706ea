import { afterAll, beforeAll, beforeEach, expect, it } from 'vitest';
import { type TestApp, startApp } from '../../support/test-app.js';
import { type FieldDay, type Order, assign, codeOf, fieldDay } from './field-day.js';

let product: TestApp;
let day: FieldDay;

beforeAll(async () => {
  product = await startApp();
});
beforeEach(async () => {
  day = await fieldDay(product);
});
afterAll(() => product.close());

const TODAY =
  'query($day: Date, $crew: ID) { today(day: $day, crewId: $crew) { id day crew { id } stops { id version position property { id } workOrders { id } } } }';
const stopsOf = async (date: string): Promise<{ id: string; position: number; workOrders: Order[] }[]> =>
  (await day.office.send(TODAY, { day: date })).data.today.flatMap((route: { stops: unknown[] }) => route.stops);
const MOVE =
  'mutation($id: ID!, $version: Int!, $position: Int!) { moveStop(id: $id, version: $version, position: $position) { stops { id position } } }';

async function threeStops(date: string): Promise<Order[]> {
  const given: Order[] = [];
  for (let count = 0; count < 3; count += 1) given.push(await day.given({ propertyId: (await day.property()).id }, date));
  return given;
}

it('makes the route and the stops, the last at the end; two orders on one property share a stop', async () => {
  const [first, second] = await threeStops('2026-07-06');
  const place = (await product.database.admin<{ property_id: string }>('select property_id from stop where id = $1', [first!.stopId]))[0]!
    .property_id;
  const again = await day.given({ propertyId: place, kind: 'read' }, '2026-07-06');
  expect(again.stopId).toBe(first!.stopId);
  const routes = (await day.office.send(TODAY, { day: '2026-07-06' })).data.today;
  expect(routes).toMatchObject([
    { day: '2026-07-06', crew: { id: day.crewId }, stops: [{ position: 1 }, { position: 2 }, { position: 3 }] },
  ]);
  expect(routes[0].stops[0].workOrders.map(({ id }: Order) => id).toSorted()).toEqual([first!.id, again.id].toSorted());
  expect(routes[0].stops[1].workOrders).toEqual([{ id: second!.id }]);
  const known = await product.database.admin(
    'select thing, deed from change where organization_id = $1 and thing in ($2, $3) order by at',
    [day.organizationId, 'route', 'stop'],
  );
  expect(known).toEqual([{ thing: 'route', deed: 'create' }, ...Array(3).fill({ thing: 'stop', deed: 'create' })]);
});

it('takes an order back: an empty stop disappears and the others move up; given again, it is back at the end', async () => {
  const [first, second, third] = await threeStops('2026-07-07');
  const back = (await assign(day.office, first!, null, null)).data.assignWorkOrder;
  expect(back).toMatchObject({ state: 'open', stopId: null, crew: null, day: null });
  expect(await stopsOf('2026-07-07')).toMatchObject([
    { id: second!.stopId, position: 1 },
    { id: third!.stopId, position: 2 },
  ]);
  const again = (await assign(day.office, back, day.crewId, '2026-07-07')).data.assignWorkOrder;
  expect(again).toMatchObject({ state: 'given out', stopId: first!.stopId });
  expect(await stopsOf('2026-07-07')).toMatchObject([{ position: 1 }, { position: 2 }, { id: first!.stopId, position: 3 }]);
});

it('moves an order to another day and crew', async () => {
  const [first] = await threeStops('2026-07-08');
  const moved = (await assign(day.office, first!, day.otherCrewId, '2026-07-09')).data.assignWorkOrder;
  expect(moved).toMatchObject({ state: 'given out', day: '2026-07-09', crew: { id: day.otherCrewId } });
  expect(await stopsOf('2026-07-08')).toHaveLength(2);
  expect((await assign(day.office, first!, null, null)).data.assignWorkOrder).toMatchObject({
    __typename: 'ChangedMeanwhile',
    version: moved.version,
  });
  expect(
    (
      await day.office.send(
        'mutation($id: ID!, $v: Int!, $crew: ID) { assignWorkOrder(id: $id, version: $v, crewId: $crew) { __typename } }',
        { id: moved.id, v: moved.version, crew: day.crewId },
      )
    ).errors[0]!.extensions,
  ).toMatchObject({ code: 'VALUE_REFUSED', details: { field: 'day' } });
});

it('makes one route and one stop for each property when all is given out at the same time', async () => {
  const places = await Promise.all([day.property(), day.property(), day.property()]);
  const orders = await Promise.all(
    [...places, ...places].map((place, at) => day.order({ propertyId: place.id, kind: at < 3 ? 'read' : 'inspect' })),
  );
  const given = await Promise.all(orders.map((order) => assign(day.office, order, day.crewId, '2026-07-16')));
  expect(given.flatMap(({ errors }) => errors)).toEqual([]);
  const stops = await stopsOf('2026-07-16');
  expect(stops.map(({ position }) => position)).toEqual([1, 2, 3]);
  expect(stops.map(({ workOrders }) => workOrders.length)).toEqual([2, 2, 2]);
});

it('changes the order of the day, once for each version that was read', async () => {
  const [first, second, third] = await threeStops('2026-07-10');
  const move = (position: number, version = 1) => day.lead.send(MOVE, { id: third!.stopId, version, position });
  expect((await move(1)).data.moveStop.stops.map(({ id }: { id: string }) => id)).toEqual([third!.stopId, first!.stopId, second!.stopId]);
  expect((await move(2)).errors[0]!.extensions).toMatchObject({
    code: 'CHANGED_SINCE_READ',
    details: { thing: 'stop', version: 2, changedBy: 'The crewLead' },
  });
  expect((await move(4, 2)).errors[0]!.extensions).toMatchObject({
    code: 'VALUE_REFUSED',
    details: { field: 'position', expected: 'a position from 1 to 3' },
  });
  expect(codeOf(await day.technician.send(MOVE, { id: third!.stopId, version: 2, position: 2 }))).toBe('NOT_ALLOWED');
  expect((await move(2, 2)).data.moveStop.stops).toEqual([
    { id: first!.stopId, position: 1 },
    { id: third!.stopId, position: 2 },
    { id: second!.stopId, position: 3 },
  ]);
});

it("shows today's routes on the organization's clock: to a crew its own, to the office all", async () => {
  await product.database.admin(`update organization set stands_still_on = '2026-07-13' where id = $1`, [day.organizationId]);
  await threeStops('2026-07-13');
  const other = await day.order({ propertyId: (await day.property()).id });
  await assign(day.office, other, day.otherCrewId, '2026-07-13');
  const crews = async (who: FieldDay['office'], crew?: string) =>
    (await who.send(TODAY, { crew })).data.today.map((route: { crew: { id: string } }) => route.crew.id);
  expect(await crews(day.technician)).toEqual([day.crewId]);
  expect(await crews(day.stranger)).toEqual([day.otherCrewId]);
  expect(await crews(day.office)).toEqual([day.crewId, day.otherCrewId]);
  expect(await crews(day.office, day.otherCrewId)).toEqual([day.otherCrewId]);
  expect((await day.office.send('{ routes(from: "2026-07-12", until: "2026-07-14") { day } }')).data.routes).toHaveLength(2);
});

it('asks the database as often for ten stops as for one', async () => {
  const whole = `query($day: Date) { today(day: $day) { crew { name members { person { name } } } stops { property { name } cautions visit { recordedBy zoneNotes { kind } }
    workOrders { kind cost notToExceed crew { name } day finding { kind } property { name } } } } }`;
  const fill = async (date: string, count: number) => {
    for (let n = 0; n < count; n += 1) {
      const { id: propertyId } = await day.property();
      const given = await day.given({ propertyId, findingId: (await day.finding(propertyId)).id }, date);
      await product.database.admin(
        'insert into visit (organization_id, property_id, stop_id, crew_id, arrived_at, person_id) values ($1, $2, $3, $4, now(), $5)',
        [day.organizationId, propertyId, given.stopId, day.crewId, day.lead.personId],
      );
    }
  };
  await fill('2026-07-14', 1);
  await fill('2026-07-15', 10);
  const count = async (date: string) => {
    const statements = countStatements(product);
    const answer = await day.technician.send(whole, { day: date });
    expect(answer.errors).toEqual([]);
    return { stops: answer.data.today[0].stops.length, statements: statements() };
  };
  const one = await count('2026-07-14');
  const ten = await count('2026-07-15');
  expect([one.stops, ten.stops]).toEqual([1, 10]);
  expect(ten.statements).toBe(one.statements);
});

/** Counts the statements of the transactions opened from now on, until the answer is read. */
function countStatements({ source }: TestApp): () => number {
  const make = source.createQueryRunner.bind(source);
  let count = 0;
  source.createQueryRunner = (...args) => {
    const runner = make(...args);
    const query = runner.query.bind(runner) as (...args: unknown[]) => Promise<never>;
    runner.query = (...statement: unknown[]) => {
      count += 1;
      return query(...statement);
    };
    return runner;
  };
  return () => {
    source.createQueryRunner = make;
    return count;
  };
}

it('tells when the stops of a day begin and end as the month tells it, to whoever sees the crew’s work', async () => {
  const TIMES = 'stops { stop { id } beginMinute endMinute lateMinutes }';
  const given = await threeStops('2026-07-08');
  const asked = async (who: FieldDay['office']) =>
    (await who.send('{ plannedTimes(day: "2026-07-08") { stop { id } beginMinute endMinute lateMinutes } }')).data.plannedTimes;
  const { monthPlan } = (await day.office.send(`{ monthPlan(month: "2026-07") { days { day ${TIMES} } } }`)).data;
  const [shown] = monthPlan.days.filter((one: { day: string; stops: unknown[] }) => one.day === '2026-07-08' && one.stops.length > 0);
  const times = await asked(day.lead);
  expect(times).toEqual(shown.stops);
  expect(times.map(({ stop }: { stop: { id: string } }) => stop.id)).toEqual(given.map(({ stopId }) => stopId));
  expect(times[0].beginMinute).toBeLessThan(times[1].beginMinute);
  expect(await asked(day.stranger)).toEqual([]);
});

it('tells of a day whose hours are over what was done, or when its stops were to begin, and not the night', async () => {
  const { database } = day.product;
  const [first] = await threeStops('2026-07-06');
  const asked = async () =>
    (await day.lead.send('{ plannedTimes(day: "2026-07-06") { stop { id } beginMinute visited } }')).data.plannedTimes;
  await database.admin('update crew set day_starts_minute = 0, day_ends_minute = 1 where id = $1', [day.crewId]);
  const planned = await asked();
  await database.admin(
    'insert into visit (organization_id, property_id, stop_id, crew_id, arrived_at, closed_at) select organization_id, property_id, id, $2, $3, $3 from stop where id = $1',
    [first!.stopId, day.crewId, '2026-07-06T16:00:00Z'],
  );
  const begun = await asked();
  await database.admin('update crew set day_starts_minute = 420, day_ends_minute = 930 where id = $1', [day.crewId]);
  expect(planned[0].beginMinute).toBeLessThan(60);
  expect(begun).toMatchObject([{ stop: { id: first!.stopId }, visited: true }]);
});
