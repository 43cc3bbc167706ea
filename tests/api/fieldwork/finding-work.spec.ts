import { afterAll, beforeAll, expect, it } from 'vitest';
import { type TestApp, startApp } from '../../support/test-app.js';
import { type FieldDay, ORDER, assign, close, codeOf, create, fieldDay } from './field-day.js';

let product: TestApp;
let day: FieldDay;

beforeAll(async () => {
  product = await startApp();
  day = await fieldDay(product);
});
afterAll(() => product.close());

const ACCEPT = `mutation($id: ID!, $version: Int!, $input: WorkOrderInput!) { acceptFinding(id: $id, version: $version, input: $input) { __typename
  ... on FindingAccepted { finding { id state version workOrders { id } } workOrder { id version state kind controllerId meterId finding { state } } }
  ... on ChangedMeanwhile { id version changedBy } } }`;
const accept = (id: string, version: number, input: Record<string, unknown>) =>
  day.office.send(ACCEPT, { id, version, input: { kind: 'inspect', ...input } });
const DROP = `mutation($id: ID!, $version: Int!, $why: String!) { dropWorkOrder(id: $id, version: $version, why: $why) { ${ORDER} } }`;
const stateOf = async (id: string) => (await product.database.admin('select state, resolved_with from finding where id = $1', [id]))[0];

it('turns a finding into work about the same meter, once for each version that was read', async () => {
  const { id: propertyId } = await day.property();
  const [meter] = await product.database.admin<{ id: string }>(
    `insert into meter (organization_id, property_id, name, unit) values ($1, $2, 'Main', 'CCF') returning id`,
    [day.organizationId, propertyId],
  );
  const finding = await day.finding(propertyId, { meter_id: meter!.id });
  const accepted = (await accept(finding.id, 1, { propertyId })).data.acceptFinding;
  expect(accepted).toMatchObject({
    __typename: 'FindingAccepted',
    finding: { state: 'in work', version: 2 },
    workOrder: { kind: 'inspect', state: 'open', meterId: meter!.id, finding: { state: 'in work' } },
  });
  expect(accepted.finding.workOrders).toEqual([{ id: accepted.workOrder.id }]);
  expect((await accept(finding.id, 1, { propertyId })).data.acceptFinding).toEqual({
    __typename: 'ChangedMeanwhile',
    id: finding.id,
    version: 2,
    changedBy: 'The office',
  });
  expect(codeOf(await accept(finding.id, 2, { propertyId }))).toBe('WORK_ORDER_EXISTS');
  expect((await accept(finding.id, 2, { propertyId, kind: 'repair' })).data.acceptFinding.finding.workOrders).toHaveLength(2);
});

it('keeps a dear repair of a finding waiting for approval', async () => {
  const { id: propertyId } = await day.property();
  const finding = await day.finding(propertyId);
  const accepted = (await accept(finding.id, 1, { propertyId, kind: 'repair', parts: [{ name: 'Pump', count: 1, price: 900 }] })).data
    .acceptFinding;
  expect(accepted).toMatchObject({ finding: { state: 'in work' }, workOrder: { state: 'waiting for approval' } });
});

it('refuses findings of another property, settled ones, and those who do not decide them', async () => {
  const { id: propertyId } = await day.property();
  const settled = await day.finding(propertyId, { state: 'dismissed', dismissed_why: 'Hydrant flushing' });
  expect((await accept(settled.id, 1, { propertyId })).errors[0]!.extensions).toMatchObject({
    code: 'FINDING_SETTLED',
    details: { state: 'dismissed' },
  });
  const other = await day.finding((await day.property()).id);
  expect((await accept(other.id, 1, { propertyId })).errors[0]!.extensions).toMatchObject({
    code: 'VALUE_REFUSED',
    details: { field: 'propertyId' },
  });
  expect(codeOf(await day.lead.send(ACCEPT, { id: other.id, version: 1, input: { kind: 'inspect', propertyId } }))).toBe('NOT_ALLOWED');
  expect(codeOf(await create(day.lead, { kind: 'inspect', propertyId: other['property_id'], findingId: other.id }))).toBe('NOT_ALLOWED');
  expect((await stateOf(other.id))!['state']).toBe('open');
});

it('resolves the finding with what was found, and takes the same closing twice', async () => {
  const { id: propertyId } = await day.property();
  const finding = await day.finding(propertyId);
  const given = await day.given({ propertyId, kind: 'repair', findingId: finding.id }, '2026-07-06');
  expect((await stateOf(finding.id))!['state']).toBe('in work');
  const closing = { done: true, note: 'Broken lateral by the gate, replaced', resolvesFinding: true };
  const closed = (await close(day.technician, given, closing)).data.closeWorkOrder;
  expect(closed).toMatchObject({
    __typename: 'WorkOrder',
    state: 'done',
    doneNote: closing.note,
    finding: { state: 'resolved' },
    day: '2026-07-06',
  });
  expect(await stateOf(finding.id)).toEqual({ state: 'resolved', resolved_with: closing.note });
  expect((await close(day.technician, given, closing)).data.closeWorkOrder).toEqual(closed);
  expect(codeOf(await assign(day.office, closed, null, null))).toBe('WORK_ORDER_ENDED');
  expect(codeOf(await close(day.technician, closed, { done: false }))).toBe('WORK_ORDER_ENDED');
});

it('leaves an order for another day: open again, its note kept, and not closed over a change of the office', async () => {
  const { id: propertyId } = await day.property();
  const given = await day.given({ propertyId }, '2026-07-07');
  const left = (await close(day.technician, given, { done: false, note: 'Gate was locked' })).data.closeWorkOrder;
  expect(left).toMatchObject({ state: 'open', leftNote: 'Gate was locked', stopId: given.stopId });
  expect((await close(day.technician, given, { done: false, note: 'Gate was locked' })).data.closeWorkOrder).toEqual(left);
  expect((await close(day.technician, given, { done: true })).data.closeWorkOrder).toMatchObject({
    __typename: 'ChangedMeanwhile',
    version: left.version,
  });
  expect((await assign(day.office, left, day.crewId, '2026-07-08')).data.assignWorkOrder).toMatchObject({
    state: 'given out',
    day: '2026-07-08',
    leftNote: 'Gate was locked',
  });
});

it('drops an order with why, and opens its finding when no other work answers it', async () => {
  const { id: propertyId } = await day.property();
  const finding = await day.finding(propertyId);
  const given = await day.given({ propertyId, kind: 'repair', findingId: finding.id }, '2026-07-09');
  const other = await day.order({ propertyId, kind: 'read', findingId: finding.id });
  const drop = (order: { id: string; version: number }, why: string) =>
    day.office.send(DROP, { id: order.id, version: order.version, why });
  expect((await drop(given, ' ')).errors[0]!.extensions).toMatchObject({ code: 'VALUE_REFUSED', details: { field: 'why' } });
  expect((await drop(given, 'The client repairs it')).data.dropWorkOrder).toMatchObject({
    state: 'dropped',
    leftNote: 'The client repairs it',
    stopId: null,
  });
  expect((await stateOf(finding.id))!['state']).toBe('in work');
  await drop(other, 'Not needed');
  expect((await stateOf(finding.id))!['state']).toBe('open');
  expect((await day.office.send('{ today(day: "2026-07-09") { id } }')).data.today).toEqual([]);
});

const ACKNOWLEDGE = `mutation($id: ID!, $version: Int!, $note: String!, $until: Date) { acknowledgeFinding(id: $id, version: $version, note: $note, until: $until) { __typename
  ... on Finding { version state isSilenced acknowledgedUntil acknowledgedNote acknowledgedBy usageStrip { meterId } } ... on ChangedMeanwhile { version } } }`;
const acknowledge = (id: string, given: Record<string, unknown>) =>
  day.office.send(ACKNOWLEDGE, { id, version: 1, note: 'parts are ordered', ...given });
const listed = async (propertyId: string, silenced: boolean) =>
  (
    await day.office.send('query($id: ID!, $silenced: Boolean) { findings(propertyId: $id, silenced: $silenced) { id } }', {
      id: propertyId,
      silenced,
    })
  ).data.findings;

it('is silent while somebody has said why it can wait, and not after that', async () => {
  const { id: propertyId } = await day.property();
  const finding = await day.finding(propertyId);
  expect(codeOf(await acknowledge(finding.id, { until: '2020-01-01' }))).toBe('VALUE_REFUSED');
  expect(codeOf(await acknowledge(finding.id, { note: ' ' }))).toBe('VALUE_REFUSED');
  const answer = {
    __typename: 'Finding',
    version: 2,
    state: 'open',
    isSilenced: true,
    acknowledgedUntil: null,
    acknowledgedNote: 'parts are ordered',
  };
  expect((await acknowledge(finding.id, {})).data.acknowledgeFinding).toMatchObject({ ...answer, usageStrip: null });
  // The same sent again is the same.
  expect((await acknowledge(finding.id, {})).data.acknowledgeFinding).toMatchObject(answer);
  expect([await listed(propertyId, true), await listed(propertyId, false)]).toEqual([[{ id: finding.id }], []]);
  await product.database.admin(`update finding set acknowledged_until = '2020-01-01' where id = $1`, [finding.id]);
  expect([await listed(propertyId, true), await listed(propertyId, false)]).toEqual([[], [{ id: finding.id }]]);
  const settled = await day.finding(propertyId, { state: 'dismissed', dismissed_why: 'Hydrant flushing', cause_key: 'another' });
  expect(codeOf(await acknowledge(settled.id, {}))).toBe('FINDING_NOT_OPEN');
});

it('is dismissed with a reason of a few, and counts in the precision of its kind', async () => {
  const { id: propertyId } = await day.property();
  const finding = await day.finding(propertyId, { kind: 'steady flow' });
  const DISMISS =
    'mutation($id: ID!, $why: String!, $reason: String) { dismissFinding(id: $id, version: 1, why: $why, reason: $reason) { ... on Finding { state dismissedWhy dismissedReason } } }';
  expect(codeOf(await day.office.send(DISMISS, { id: finding.id, why: '', reason: 'tired of it' }))).toBe('VALUE_REFUSED');
  const dismissed = await day.office.send(DISMISS, { id: finding.id, why: '', reason: 'client wants it' });
  expect(dismissed.data.dismissFinding).toEqual({
    state: 'dismissed',
    dismissedWhy: 'client wants it',
    dismissedReason: 'client wants it',
  });
  const { data } = await day.office.send('{ findingPrecision { kind decided ledToWork confirmed share } }');
  expect(data.findingPrecision).toContainEqual({ kind: 'steady flow', decided: 1, ledToWork: 0, confirmed: 1, share: 1 });
});

const DISMISS_AS = `mutation($id: ID!, $version: Int!, $why: String!, $reason: String) { dismissFinding(id: $id, version: $version, why: $why, reason: $reason) {
  ... on Finding { state version dismissedWhy dismissedReason resolvedWith } } }`;
const RESOLVE =
  'mutation($id: ID!, $version: Int!, $with: String!) { resolveFinding(id: $id, version: $version, with: $with) { ... on Finding { state version dismissedWhy dismissedReason resolvedWith } } }';
const REOPEN =
  'mutation($id: ID!, $version: Int!) { reopenFinding(id: $id, version: $version) { ... on Finding { state version isSilenced resolvedWith } } }';

it('is decided in words of a length that can be read, and never with none', async () => {
  const { id } = await day.finding((await day.property()).id);
  const endless = 'water '.repeat(1000);
  expect(codeOf(await day.office.send(DISMISS_AS, { id, version: 1, why: endless, reason: 'other' }))).toBe('VALUE_REFUSED');
  expect(codeOf(await day.office.send(RESOLVE, { id, version: 1, with: endless }))).toBe('VALUE_REFUSED');
  expect(codeOf(await day.office.send(RESOLVE, { id, version: 1, with: ' ' }))).toBe('VALUE_REFUSED');
  expect(codeOf(await acknowledge(id, { note: endless }))).toBe('VALUE_REFUSED');
  expect((await stateOf(id))!['state']).toBe('open');
});

it('says only what was decided last, and takes another reason in the same words', async () => {
  const { id } = await day.finding((await day.property()).id);
  const resolved = { state: 'resolved', version: 2, dismissedWhy: null, dismissedReason: null, resolvedWith: 'A cracked lateral' };
  expect((await day.office.send(RESOLVE, { id, version: 1, with: 'A cracked lateral' })).data.resolveFinding).toEqual(resolved);
  const why = 'asked on site';
  const dismissed = { state: 'dismissed', version: 3, dismissedWhy: why, dismissedReason: 'client wants it', resolvedWith: null };
  expect((await day.office.send(DISMISS_AS, { id, version: 2, why, reason: 'client wants it' })).data.dismissFinding).toEqual(dismissed);
  expect((await day.office.send(DISMISS_AS, { id, version: 3, why, reason: 'not useful' })).data.dismissFinding).toEqual({
    ...dismissed,
    version: 4,
    dismissedReason: 'not useful',
  });
});

it('goes back to work when a dismissal is taken back while its work stands', async () => {
  const { id: propertyId } = await day.property();
  const { id } = await day.finding(propertyId);
  await accept(id, 1, { propertyId });
  await day.office.send(DISMISS_AS, { id, version: 2, why: '', reason: 'not useful' });
  expect((await day.office.send(REOPEN, { id, version: 3 })).data.reopenFinding).toMatchObject({ state: 'in work', version: 4 });
});

it('is told again when it is opened after it was resolved, though it was silent until it cleared', async () => {
  const { id } = await day.finding((await day.property()).id);
  await acknowledge(id, {});
  await day.office.send(RESOLVE, { id, version: 2, with: 'A stuck valve' });
  expect((await day.office.send(REOPEN, { id, version: 3 })).data.reopenFinding).toEqual({
    state: 'open',
    version: 4,
    isSilenced: false,
    resolvedWith: null,
  });
});
