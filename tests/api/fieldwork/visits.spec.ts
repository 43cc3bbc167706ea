import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { aZone } from '../../support/builders.js';
import { type Somebody, type TestApp, startApp } from '../../support/test-app.js';
import { type FieldDay, type Order, assign, codeOf, fieldDay } from './field-day.js';

let product: TestApp;
let day: FieldDay;

beforeAll(async () => {
  product = await startApp();
  day = await fieldDay(product);
});
afterAll(() => product.close());

const VISIT = 'id version propertyId stopId crewId arrivedAt closedAt doneNote leftNote recordedBy zoneNotes { kind count word repaired }';
const arrive = (who: Somebody, input: Record<string, unknown>) =>
  who.send(`mutation($input: VisitInput!) { arrive(input: $input) { ${VISIT} } }`, { input });
const note = (who: Somebody, input: Record<string, unknown>) =>
  who.send('mutation($input: ZoneNoteInput!) { noteZone(input: $input) { id kind count word repaired zoneId visitId } }', { input });
const closeVisit = (who: Somebody, visit: { id: string; version: number }, input: Record<string, unknown>) =>
  who.send(
    `mutation($id: ID!, $version: Int!, $closedAt: DateTime!, $doneNote: String, $leftNote: String) { closeVisit(id: $id, version: $version, closedAt: $closedAt, doneNote: $doneNote, leftNote: $leftNote) { ${VISIT} } }`,
    { id: visit.id, version: visit.version, ...input },
  );

const aStop = async (date: string): Promise<Order & { propertyId: string }> => {
  const { id: propertyId } = await day.property();
  return { ...(await day.given({ propertyId }, date)), propertyId };
};
const visited = async (date: string, who = day.technician) => {
  const stop = await aStop(date);
  const visit = (await arrive(who, { deviceRecordId: randomUUID(), stopId: stop.stopId, arrivedAt: '2026-07-06T15:00:00Z' })).data.arrive;
  return { stop, visit };
};

it('keeps an arrival once, however often the phone sends it; and says when the same name comes with another content', async () => {
  const stop = await aStop('2026-07-06');
  const input = { deviceRecordId: randomUUID(), stopId: stop.stopId, arrivedAt: '2026-07-06T15:04:05Z' };
  const first = (await arrive(day.technician, input)).data.arrive;
  expect(first).toMatchObject({
    version: 1,
    propertyId: stop.propertyId,
    stopId: stop.stopId,
    crewId: day.crewId,
    arrivedAt: '2026-07-06T15:04:05.000Z',
    closedAt: null,
    recordedBy: 'The technician',
    zoneNotes: [],
  });
  expect((await arrive(day.technician, input)).data.arrive).toEqual(first);
  expect((await arrive(day.technician, { ...input, arrivedAt: '2026-07-06T16:00:00Z' })).errors[0]!.extensions).toMatchObject({
    code: 'VISIT_CONFLICT',
    details: { visitId: first.id, arrivedAt: '2026-07-06T15:04:05.000Z' },
  });
  const shown = (
    await day.technician.send(
      'query($id: ID!, $property: ID!) { stop(id: $id) { visit { id } } property(id: $property) { visits { id } } }',
      { id: stop.stopId, property: stop.propertyId },
    )
  ).data;
  expect(shown).toEqual({ stop: { visit: { id: first.id } }, property: { visits: [{ id: first.id }] } });
});

it('keeps a visit to a stop that the office took off the route meanwhile', async () => {
  const stop = await aStop('2026-07-07');
  await assign(day.office, stop, null, null);
  expect((await day.technician.send('query($id: ID!) { stop(id: $id) { id } }', { id: stop.stopId })).data.stop).toBeNull();
  expect(
    (await arrive(day.technician, { deviceRecordId: randomUUID(), stopId: stop.stopId, arrivedAt: '2026-07-07T15:00:00Z' })).data.arrive,
  ).toMatchObject({ stopId: stop.stopId });
});

it('keeps a stop that was visited when its work is taken back', async () => {
  const { stop } = await visited('2026-07-08');
  await assign(day.office, stop, null, null);
  expect((await day.technician.send('query($id: ID!) { stop(id: $id) { workOrders { id } } }', { id: stop.stopId })).data.stop).toEqual({
    workOrders: [],
  });
});

it('has one note for each zone and kind, so that sent twice is once and a higher count replaces', async () => {
  const { stop, visit } = await visited('2026-07-09');
  const zone = await aZone(product.database, { id: stop.propertyId, organization_id: day.organizationId });
  const first = (await note(day.technician, { visitId: visit.id, zoneId: zone.id, kind: 'broken head', count: 1 })).data.noteZone;
  expect(first).toMatchObject({ kind: 'broken head', count: 1, word: null, repaired: false, zoneId: zone.id, visitId: visit.id });
  await note(day.technician, { visitId: visit.id, zoneId: zone.id, kind: 'broken head', count: 1 });
  expect(
    (
      await note(day.technician, {
        visitId: visit.id,
        zoneId: zone.id,
        kind: 'broken head',
        count: 3,
        word: 'along the walk',
        repaired: true,
      })
    ).data.noteZone,
  ).toMatchObject({ id: first.id, count: 3, word: 'along the walk', repaired: true });
  await note(day.technician, { visitId: visit.id, kind: 'broken head', count: 1 });
  await note(day.technician, { visitId: visit.id, zoneId: zone.id, kind: 'other', count: 1, word: 'Ants in the valve box' });
  await note(day.technician, { visitId: visit.id, zoneId: zone.id, kind: 'other', count: 1, word: 'No lid' });
  const [kept] = (
    await day.technician.send('query($id: ID!) { stop(id: $id) { visit { zoneNotes { kind count word } } } }', { id: stop.stopId })
  ).data.stop.visit.zoneNotes;
  expect(kept).toEqual({ kind: 'broken head', count: 3, word: 'along the walk' });
  expect((await product.database.admin('select count(*)::int as count from zone_note where visit_id = $1', [visit.id]))[0]).toEqual({
    count: 4,
  });
});

it('refuses notes of an unknown kind, of nothing, and of a zone elsewhere', async () => {
  const { visit } = await visited('2026-07-10');
  const refused = async (input: Record<string, unknown>) =>
    (await note(day.technician, { visitId: visit.id, kind: 'leak', count: 1, ...input })).errors[0]!.extensions;
  expect(await refused({ kind: 'dog' })).toMatchObject({ code: 'VALUE_REFUSED', details: { field: 'kind', found: 'dog' } });
  expect(await refused({ count: 0 })).toMatchObject({ code: 'VALUE_REFUSED', details: { field: 'count' } });
  const elsewhere = await aZone(product.database, await day.property());
  expect(await refused({ zoneId: elsewhere.id })).toMatchObject({ code: 'VALUE_REFUSED', details: { field: 'zoneId' } });
});

it('ends a visit once for each version, and takes the same ending twice', async () => {
  const { visit } = await visited('2026-07-13');
  expect((await closeVisit(day.technician, visit, { closedAt: '2026-07-06T14:00:00Z' })).errors[0]!.extensions).toMatchObject({
    code: 'VALUE_REFUSED',
    details: { field: 'closedAt' },
  });
  const ending = { closedAt: '2026-07-06T15:40:00Z', doneNote: 'Set as planned', leftNote: 'Zone 3 valve' };
  const closed = (await closeVisit(day.technician, visit, ending)).data.closeVisit;
  expect(closed).toMatchObject({ version: 2, closedAt: '2026-07-06T15:40:00.000Z', doneNote: 'Set as planned', leftNote: 'Zone 3 valve' });
  expect((await closeVisit(day.technician, visit, ending)).data.closeVisit).toEqual(closed);
  expect((await closeVisit(day.technician, visit, { ...ending, doneNote: 'Nothing' })).errors[0]!.extensions).toMatchObject({
    code: 'CHANGED_SINCE_READ',
    details: { thing: 'visit', version: 2 },
  });
  expect((await closeVisit(day.technician, closed, { ...ending, leftNote: null })).data.closeVisit).toMatchObject({
    version: 3,
    leftNote: null,
  });
});

it("lets a lead end a technician's visit, but not a technician the lead's", async () => {
  const ending = { closedAt: '2026-07-06T15:40:00Z' };
  const leads = (await visited('2026-07-14', day.lead)).visit;
  expect((await closeVisit(day.technician, leads, ending)).errors[0]!.extensions).toEqual({
    code: 'NOT_ALLOWED',
    details: { permission: "close others' stops" },
  });
  const technicians = (await visited('2026-07-15')).visit;
  expect((await closeVisit(day.lead, technicians, ending)).data.closeVisit).toMatchObject({ version: 2, recordedBy: 'The technician' });
  expect(codeOf(await closeVisit(day.stranger, technicians, ending))).toBe('NOT_FOUND');
});
