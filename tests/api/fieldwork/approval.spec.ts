import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Built } from '../../support/builders.js';
import { type TestApp, startApp } from '../../support/test-app.js';
import { type FieldDay, ORDER, assign, close, codeOf, create, fieldDay } from './field-day.js';

let product: TestApp;
let day: FieldDay;
let property: Built;

beforeAll(async () => {
  product = await startApp();
  day = await fieldDay(product);
  property = await day.property();
});
afterAll(() => product.close());

const CHANGE = `mutation($id: ID!, $version: Int!, $input: WorkOrderInput!) { changeWorkOrder(id: $id, version: $version, input: $input) { ${ORDER} } }`;
const APPROVE = `mutation($id: ID!, $version: Int!) { approveWorkOrder(id: $id, version: $version) { ${ORDER} } }`;
// 2 h x 60 + 4 x 40.10 = 280.40, above the 250 that the client lets be spent
const dear = () => ({
  propertyId: property.id,
  kind: 'repair',
  labourHours: 2,
  labourRate: 60,
  parts: [{ name: 'Valve', count: 4, price: 40.1 }],
});

it('adds up labour and parts, and knows no cost where none is stated', async () => {
  const cheap = (await create(day.office, { ...dear(), parts: [{ name: 'Nozzle', count: 3, price: 2.5 }] })).data.createWorkOrder;
  expect(cheap).toMatchObject({
    __typename: 'WorkOrder',
    state: 'open',
    cost: 127.5,
    notToExceed: 250,
    parts: [{ name: 'Nozzle', count: 3, price: 2.5 }],
  });
  expect((await create(day.office, { propertyId: property.id, kind: 'inspect' })).data.createWorkOrder).toMatchObject({
    cost: null,
    estimateMinutes: 30,
  });
  expect((await create(day.office, { propertyId: property.id, kind: 'repair', labourHours: 2 })).data.createWorkOrder).toMatchObject({
    cost: null,
    state: 'open',
  });
});

it('keeps a repair above the limit waiting, gives it to nobody, and opens it when it is approved', async () => {
  const made = (await create(day.lead, { ...dear(), propertyId: (await goingThere()).id })).data.createWorkOrder;
  expect(made).toMatchObject({
    __typename: 'ApprovalNeeded',
    needed: 280.4,
    limit: 250,
    workOrder: { state: 'waiting for approval', version: 1 },
  });
  const { workOrder } = made;
  expect((await assign(day.office, workOrder, day.crewId, '2026-07-06')).data.assignWorkOrder).toMatchObject({
    __typename: 'ApprovalNeeded',
    workOrder: { version: 1 },
  });
  expect((await close(day.office, workOrder, { done: true })).data.closeWorkOrder.__typename).toBe('ApprovalNeeded');

  expect((await day.lead.send(APPROVE, workOrder)).errors[0]!.extensions).toEqual({
    code: 'NOT_ALLOWED',
    details: { permission: 'approve work' },
  });
  const approved = (await day.office.send(APPROVE, workOrder)).data.approveWorkOrder;
  expect(approved).toMatchObject({ __typename: 'WorkOrder', state: 'open', version: 2, cost: 280.4 });
  expect(codeOf(await day.office.send(APPROVE, approved))).toBe('WORK_ORDER_NOT_WAITING');
  expect((await assign(day.office, approved, day.crewId, '2026-07-06')).data.assignWorkOrder).toMatchObject({
    state: 'given out',
    day: '2026-07-06',
  });
  const kept = await product.database.admin('select deed, after, person_id from change where thing_id = $1 order by thing_version', [
    workOrder.id,
  ]);
  expect(kept).toMatchObject([
    { deed: 'create', person_id: day.lead.personId },
    { deed: 'change', after: { state: 'open', approvedBy: day.office.personId } },
    { deed: 'change', after: { state: 'given out' } },
  ]);
});

it('has it wait again, off its route, when it becomes dearer than what was approved; and not when it becomes cheaper', async () => {
  const made = (await create(day.office, dear())).data.createWorkOrder.workOrder;
  const approved = (await day.owner.send(APPROVE, { id: made.id, version: made.version })).data.approveWorkOrder;
  const change = async (order: { id: string; version: number }, labourHours: number) =>
    (await day.office.send(CHANGE, { id: order.id, version: order.version, input: { ...dear(), labourHours } })).data.changeWorkOrder;
  const cheaper = await change(approved, 1.9);
  expect(cheaper).toMatchObject({ __typename: 'WorkOrder', state: 'open', cost: 274.4 });
  const given = (await assign(day.office, cheaper, day.crewId, '2026-07-07')).data.assignWorkOrder;
  const dearer = await change(given, 5);
  expect(dearer).toMatchObject({ __typename: 'ApprovalNeeded', needed: 460.4, workOrder: { state: 'waiting for approval' } });
  expect((await day.office.send('{ today(day: "2026-07-07") { id } }')).data.today).toEqual([]);
  expect(await change(dearer.workOrder, 1)).toMatchObject({ __typename: 'WorkOrder', state: 'open', cost: 220.4 });
});

it('lets it be given out when the client lets more be spent', async () => {
  const client = await product.database.admin<{ id: string }>(
    'insert into client (organization_id, name, not_to_exceed) values ($1, $2, 100) returning id',
    [day.organizationId, 'Old Mill Retail'],
  );
  const place = await day.property({ client_id: client[0]!.id });
  const { workOrder } = (await create(day.office, { ...dear(), propertyId: place.id })).data.createWorkOrder;
  await product.database.admin('update client set not_to_exceed = null where id = $1', [client[0]!.id]);
  expect((await assign(day.office, workOrder, day.crewId, '2026-07-08')).data.assignWorkOrder).toMatchObject({
    __typename: 'WorkOrder',
    state: 'given out',
    notToExceed: null,
  });
});

it('approves no price that is not named: hours without a rate are none', async () => {
  const place = await day.property();
  const made = await product.database.admin<{ id: string }>(
    `insert into work_order (organization_id, property_id, kind, state, labour_hours, parts) values ($1, $2, 'repair', 'waiting for approval', 2, '[{"name":"Valve","count":9,"price":40}]') returning id`,
    [day.organizationId, place.id],
  );
  expect(codeOf(await day.office.send(APPROVE, { id: made[0]!.id, version: 1 }))).toBe('WORK_ORDER_NOT_PRICED');
  const price = { propertyId: place.id, kind: 'repair', labourHours: 2, labourRate: 60, parts: [{ name: 'Valve', count: 9, price: 40 }] };
  const priced = (await day.office.send(CHANGE, { id: made[0]!.id, version: 1, input: price })).data.changeWorkOrder;
  expect(priced).toMatchObject({ __typename: 'ApprovalNeeded', needed: 480 });
  expect((await day.office.send(APPROVE, priced.workOrder)).data.approveWorkOrder).toMatchObject({ state: 'open', cost: 480 });
});

it('says what cannot be kept: kind, numbers, parts, things of another property', async () => {
  const refused = async (input: Record<string, unknown>) =>
    (await create(day.office, { propertyId: property.id, kind: 'repair', ...input })).errors[0]!.extensions;
  expect(await refused({ kind: 'mow' })).toMatchObject({
    code: 'VALUE_REFUSED',
    details: { field: 'kind', found: 'mow', expected: 'one of adjust, inspect, repair, read, upgrade, plant care' },
  });
  expect(await refused({ labourHours: -1 })).toMatchObject({ details: { field: 'labourHours' } });
  expect(await refused({ parts: [{ name: 'Pipe', count: 0, price: 1 }] })).toMatchObject({
    details: { field: 'parts[0].count', expected: 'more than 0' },
  });
  const elsewhere = await product.database.admin<{ id: string }>(
    `insert into controller (organization_id, property_id, name, stations) values ($1, $2, 'North', 12) returning id`,
    [day.organizationId, (await day.property()).id],
  );
  expect(await refused({ controllerId: elsewhere[0]!.id })).toMatchObject({ code: 'VALUE_REFUSED', details: { field: 'controllerId' } });
  expect(await refused({ propertyId: day.crewId })).toEqual({ code: 'NOT_FOUND', details: { thing: 'property', id: day.crewId } });
});

it('says who was faster', async () => {
  const made = (await create(day.office, { propertyId: property.id, kind: 'inspect' })).data.createWorkOrder;
  const change = (who: FieldDay['office'], what: string) =>
    who.send(CHANGE, { id: made.id, version: 1, input: { propertyId: property.id, kind: 'inspect', what } });
  expect((await change(day.owner, 'Look for a wet spot')).data.changeWorkOrder).toMatchObject({ version: 2, what: 'Look for a wet spot' });
  expect((await change(day.office, 'Look at the north bed')).data.changeWorkOrder).toEqual({
    __typename: 'ChangedMeanwhile',
    id: made.id,
    version: 2,
    changedBy: 'The owner',
  });
});

/** A property on the lead's route. */
async function goingThere(): Promise<Built> {
  const place = await day.property();
  await day.given({ propertyId: place.id }, '2026-07-09');
  return place;
}
