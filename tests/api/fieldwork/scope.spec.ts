import { afterAll, beforeAll, expect, it } from 'vitest';
import { type Somebody, type TestApp, startApp } from '../../support/test-app.js';
import { type FieldDay, assign, close, codeOf, create, fieldDay } from './field-day.js';

let product: TestApp;
let day: FieldDay;

beforeAll(async () => {
  product = await startApp();
  day = await fieldDay(product);
});
afterAll(() => product.close());

const ids = (rows: { id: string }[]): string[] => rows.map(({ id }) => id).toSorted();

it('shows a crew its own work only; its lead also what nobody has on the properties where it goes', async () => {
  const [here, there] = [await day.property(), await day.property()];
  const own = await day.given({ propertyId: here.id }, '2026-07-06');
  const nobodys = await day.order({ propertyId: here.id, kind: 'repair' });
  const others = await day.order({ propertyId: there.id });
  const othersGiven = (await assign(day.office, others, day.otherCrewId, '2026-07-06')).data.assignWorkOrder;
  const seen = async (who: Somebody) => ids((await who.send('{ workOrders { id } }')).data.workOrders);
  expect(await seen(day.office)).toEqual(ids([own, nobodys, othersGiven]));
  expect(await seen(day.lead)).toEqual(ids([own, nobodys]));
  expect(await seen(day.technician)).toEqual(ids([own]));
  expect(await seen(day.stranger)).toEqual(ids([othersGiven]));

  const one = (who: Somebody) =>
    who.send('query($order: ID!, $stop: ID!) { workOrder(id: $order) { id } stop(id: $stop) { id } }', { order: own.id, stop: own.stopId });
  expect((await one(day.technician)).data).toEqual({ workOrder: { id: own.id }, stop: { id: own.stopId } });
  expect((await one(day.stranger)).data).toEqual({ workOrder: null, stop: null });
  expect(
    (await day.office.send('query($crew: ID) { workOrders(crewId: $crew, state: ["given out"]) { id } }', { crew: day.otherCrewId })).data
      .workOrders,
  ).toEqual([{ id: othersGiven.id }]);
});

it("tells the crew the client's name, not whom the office writes to nor what may be spent", async () => {
  const own = await day.given({ propertyId: (await day.property()).id }, '2026-07-06');
  await product.database.admin(`update client set emails = '{board@example.test}', not_to_exceed = 400 where organization_id = $1`, [
    day.office.organizationId,
  ]);
  const client = async (who: Somebody) =>
    (await who.send('query($stop: ID!) { stop(id: $stop) { property { client { name emails notToExceed } } } }', { stop: own.stopId })).data
      .stop.property.client;
  const { name } = await client(day.office);
  expect(await client(day.office)).toEqual({ name, emails: ['board@example.test'], notToExceed: 400 });
  expect(await client(day.lead)).toEqual({ name, emails: null, notToExceed: null });
  expect(await client(day.technician)).toEqual({ name, emails: null, notToExceed: null });
});

it("answers not found for another crew's order, stop, crew and visit", async () => {
  const own = await day.given({ propertyId: (await day.property()).id }, '2026-07-07');
  expect((await close(day.stranger, own, { done: true })).errors[0]!.extensions).toEqual({
    code: 'NOT_FOUND',
    details: { thing: 'work order', id: own.id },
  });
  expect(codeOf(await assign(day.stranger, own, day.otherCrewId, '2026-07-07'))).toBe('NOT_FOUND');
  expect((await assign(day.lead, own, day.otherCrewId, '2026-07-07')).errors[0]!.extensions).toEqual({
    code: 'NOT_FOUND',
    details: { thing: 'crew', id: day.otherCrewId },
  });
  const arrive = (who: Somebody) =>
    who.send('mutation($input: VisitInput!) { arrive(input: $input) { id version } }', {
      input: { deviceRecordId: '0197d000-0000-7000-8000-000000000001', stopId: own.stopId, arrivedAt: '2026-07-07T15:00:00Z' },
    });
  expect((await arrive(day.stranger)).errors[0]!.extensions).toEqual({ code: 'NOT_FOUND', details: { thing: 'stop', id: own.stopId } });
  const { id } = (await arrive(day.technician)).data.arrive;
  expect(
    codeOf(await day.stranger.send('mutation($id: ID!) { noteZone(input: { visitId: $id, kind: "leak", count: 1 }) { id } }', { id })),
  ).toBe('NOT_FOUND');
  expect(
    codeOf(await day.stranger.send('mutation($id: ID!) { moveStop(id: $id, version: 1, position: 1) { id } }', { id: own.stopId })),
  ).toBe('NOT_FOUND');
  expect(codeOf(await day.stranger.send('query($crew: ID) { today(crewId: $crew) { id } }', { crew: day.crewId }))).toBe('NOT_FOUND');
  expect(codeOf(await close(day.office, { id: 'no-uuid', version: 1 }, { done: true }))).toBe('NOT_FOUND');
});

it("keeps another organization's members out", async () => {
  const own = await day.given({ propertyId: (await day.property()).id }, '2026-07-08');
  const foreign = await product.somebody(await product.organization(), 'owner');
  expect(
    (await foreign.send('{ workOrders { id } crews { id } routes(from: "2026-01-01", until: "2026-12-31") { id } waterReports { id } }'))
      .data,
  ).toEqual({ workOrders: [], crews: [], routes: [], waterReports: [] });
  expect(codeOf(await close(foreign, own, { done: true }))).toBe('NOT_FOUND');
  expect(codeOf(await assign(foreign, own, day.crewId, '2099-07-08'))).toBe('NOT_FOUND');
});

it('lets those assign whose role includes it, and nobody in without a role for field work', async () => {
  const own = await day.given({ propertyId: (await day.property()).id }, '2026-07-09');
  expect((await assign(day.technician, own, null, null)).errors[0]!.extensions).toEqual({
    code: 'NOT_ALLOWED',
    details: { permission: 'assign work' },
  });
  expect(codeOf(await create(day.technician, { propertyId: own.id, kind: 'read' }))).toBe('NOT_ALLOWED');
  const client = await product.somebody(day.organizationId, 'client', day.clientId);
  expect(codeOf(await client.send('{ workOrders { id } }'))).toBe('NOT_ALLOWED');
  expect(codeOf(await client.send('{ today { id } }'))).toBe('NOT_ALLOWED');
  expect(codeOf(await close(client, own, { done: true }))).toBe('NOT_ALLOWED');
  expect(codeOf(await product.send('{ workOrders { id } }'))).toBe('SIGN_IN_NEEDED');
});

it("hides a property's work and visits from its client", async () => {
  const place = await day.property();
  const own = await day.given({ propertyId: place.id }, '2026-07-10');
  const client = await product.somebody(day.organizationId, 'client', day.clientId);
  const ask = async (who: Somebody) =>
    (await who.send('query($id: ID!) { property(id: $id) { workOrders { id } visits { id } } }', { id: place.id })).data.property;
  expect(await ask(client)).toEqual({ workOrders: [], visits: [] });
  expect(await ask(day.technician)).toEqual({ workOrders: [{ id: own.id }], visits: [] });
  expect(await ask(day.stranger)).toBeNull();
});
