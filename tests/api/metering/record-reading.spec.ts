import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, expect, it } from 'vitest';
import { type Built, aCrew, aMeter, aProperty, aReading, aStop, inCrew } from '../../support/builders.js';
import { type Somebody, type TestApp, startApp } from '../../support/test-app.js';

let product: TestApp;
let office: Somebody;
let technician: Somebody;
let meter: Built;

const RECORD = `mutation($input: ReadingInput!) { recordReading(input: $input) { __typename
  ... on Reading { id meterId readAt register source note replacedById recordedBy litresSinceLast judgement }
  ... on ReadingConflict { kept { id register replacedById } } } }`;
const JUDGE = `query($meterId: ID!, $readAt: DateTime!, $register: Float!) { judgeReading(meterId: $meterId, readAt: $readAt, register: $register) {
  judgement litresSinceLast lastReadAt lastRegister likelyRegister } }`;
/** NIST SP 811 (2008), Appendix B.8: 1 ft³ = 28.316 846 592 L, so a CCF is a hundred times that. */
const LITRES_PER_CCF = 2831.6846592;

const aRecord = (content: Record<string, unknown> = {}) => ({
  deviceRecordId: randomUUID(),
  meterId: meter.id,
  readAt: '2026-07-06T15:00:00.000Z',
  register: 1200,
  ...content,
});
const record = async (who: Somebody, input: Record<string, unknown>) => {
  const answer = await who.send(RECORD, { input });
  return answer.data?.recordReading ?? answer.errors[0];
};
const rowsOf = (id: string) =>
  product.database.admin<{ register: number; replaced_by_id: string | null }>(
    'select * from reading where meter_id = $1 order by recorded_at',
    [id],
  );

beforeAll(async () => {
  product = await startApp();
  office = await product.somebody(await product.organization(), 'office');
  technician = await product.somebody(office.organizationId, 'technician');
});
beforeEach(async () => {
  const property = await aProperty(product.database, office.organizationId);
  meter = await aMeter(product.database, property);
  const crew = await aCrew(product.database, office.organizationId);
  await inCrew(product.database, crew, technician.memberId);
  await aStop(product.database, crew, property);
});
afterAll(() => product.close());

it('keeps a reading once, however often it is delivered', async () => {
  const input = aRecord({ note: ' by the east gate ' });
  const first = await record(technician, input);
  expect(first).toMatchObject({
    __typename: 'Reading',
    register: 1200,
    source: 'crew',
    note: 'by the east gate',
    recordedBy: 'The technician',
    judgement: 'first',
    litresSinceLast: null,
  });
  for (let delivery = 2; delivery <= 5; delivery += 1) expect(await record(technician, input)).toEqual(first);
  expect(await rowsOf(meter.id)).toHaveLength(1);
});

it('makes one row of 32 equal submissions at once', async () => {
  const input = aRecord();
  const answers = await Promise.all(Array.from({ length: 32 }, () => record(technician, input)));
  expect(new Set(answers.map((answer) => answer.id)).size).toBe(1);
  expect(answers.every((answer) => answer.__typename === 'Reading')).toBe(true);
  expect(await rowsOf(meter.id)).toHaveLength(1);
});

it('shows what is kept when a name comes again with another content', async () => {
  const input = aRecord();
  const { id } = await record(technician, input);
  for (const other of [{ register: 1201 }, { readAt: '2026-07-06T16:00:00Z' }, { note: 'other' }])
    expect(await record(technician, { ...input, ...other })).toEqual({
      __typename: 'ReadingConflict',
      kept: { id, register: 1200, replacedById: null },
    });
  expect(await rowsOf(meter.id)).toHaveLength(1);
});

it('keeps one reading of a meter at an instant: the same register is the same reading, another is a conflict', async () => {
  const { id } = await record(technician, aRecord());
  expect(await record(office, aRecord())).toMatchObject({ __typename: 'Reading', id });
  expect(await record(office, aRecord({ register: 1300 }))).toMatchObject({ __typename: 'ReadingConflict', kept: { id } });
  expect(await rowsOf(meter.id)).toHaveLength(1);
});

it('corrects a reading by another one; the one before keeps its row', async () => {
  const input = aRecord({ register: 2100 });
  const wrong = await record(technician, input);
  const correction = aRecord({ register: 1210, replacesId: wrong.id });
  const answers = await Promise.all(Array.from({ length: 8 }, () => record(technician, correction)));
  expect(new Set(answers.map(({ id, __typename }) => `${__typename} ${id}`)).size).toBe(1);
  expect(await rowsOf(meter.id)).toMatchObject([
    { register: 2100, replaced_by_id: answers[0].id },
    { register: 1210, replaced_by_id: null },
  ]);
  // The first one, delivered late once more, is still acknowledged.
  expect(await record(technician, input)).toMatchObject({ __typename: 'Reading', id: wrong.id, replacedById: answers[0].id });
  // A second correction of what is corrected already meets the one that stands.
  expect(await record(office, aRecord({ register: 1220, replacesId: wrong.id }))).toMatchObject({
    __typename: 'ReadingConflict',
    kept: { id: answers[0].id, register: 1210 },
  });
});

it('refuses what cannot be kept, with a sentence', async () => {
  const refused = async (content: Record<string, unknown>) => record(technician, aRecord(content));
  expect(await refused({ register: -1 })).toMatchObject({
    message: 'register: found -1, expected a number of at least 0 and at most twelve digits, as on the dial.',
    extensions: { code: 'VALUE_REFUSED' },
  });
  expect(await refused({ deviceRecordId: 'seven' })).toMatchObject({
    extensions: { code: 'VALUE_REFUSED', details: { field: 'deviceRecordId' } },
  });
  expect(await refused({ readAt: '2126-07-06T15:00:00Z' })).toMatchObject({
    extensions: { code: 'VALUE_REFUSED', details: { field: 'readAt' } },
  });
  expect(await refused({ note: 'x'.repeat(2001) })).toMatchObject({ extensions: { code: 'VALUE_REFUSED', details: { field: 'note' } } });
  expect(await refused({ replacesId: randomUUID() })).toMatchObject({
    extensions: { code: 'VALUE_REFUSED', details: { field: 'replacesId' } },
  });
  expect(await rowsOf(meter.id)).toHaveLength(0);
});

it('is closed to another crew, to clients and to other organizations: for them there is no such meter', async () => {
  const other = await product.somebody(office.organizationId, 'technician');
  const stranger = await product.somebody(await product.organization(), 'owner');
  for (const who of [other, stranger]) {
    expect(await record(who, aRecord())).toMatchObject({ extensions: { code: 'NOT_FOUND', details: { thing: 'meter', id: meter.id } } });
    const judged = await who.send(JUDGE, { meterId: meter.id, readAt: '2026-07-06T15:00:00Z', register: 1 });
    expect(judged.errors[0]!.extensions.code).toBe('NOT_FOUND');
  }
  const [property] = await product.database.admin<{ client_id: string }>('select client_id from property where id = $1', [
    meter['property_id'],
  ]);
  const client = await product.somebody(office.organizationId, 'client', property!.client_id);
  expect(await record(client, aRecord())).toMatchObject({ extensions: { code: 'NOT_ALLOWED' } });
  expect(await rowsOf(meter.id)).toHaveLength(0);
});

it("does not show another crew's reading to whoever knows its name", async () => {
  const input = aRecord();
  await record(technician, input);
  const other = await product.somebody(office.organizationId, 'technician');
  expect(await record(other, input)).toMatchObject({ extensions: { code: 'NOT_FOUND' } });
});

it('judges a register before it is saved, by the last that was right', async () => {
  // A year of 10 CCF a day: only nearly a year says what is too much, for water follows the seasons.
  const year = { '2025-06-01': 1000, '2025-09-01': 1920, '2025-12-01': 2830, '2026-03-01': 3730, '2026-06-01': 4650 };
  for (const [day, register] of Object.entries(year)) await aReading(product.database, meter, { read_at: `${day}T15:00:00Z`, register });
  const judge = async (register: number, readAt = '2026-06-08T15:00:00Z') =>
    (await technician.send(JUDGE, { meterId: meter.id, readAt, register })).data.judgeReading;
  expect(await judge(4720)).toEqual({
    judgement: 'ok',
    litresSinceLast: expect.closeTo(70 * LITRES_PER_CCF, 6),
    lastReadAt: '2026-06-01T15:00:00.000Z',
    lastRegister: 4650,
    likelyRegister: null,
  });
  expect(await judge(4600)).toMatchObject({ judgement: 'lower than last', litresSinceLast: null, likelyRegister: null });
  expect(await judge(4270)).toMatchObject({ judgement: 'digits swapped', likelyRegister: 4720 });
  expect(await judge(9000)).toMatchObject({ judgement: 'implausibly high' });
  expect(await judge(4650)).toMatchObject({ judgement: 'stuck', litresSinceLast: 0 });
  expect(await judge(1_350_000)).toMatchObject({ judgement: 'implausibly high', litresSinceLast: null });
  expect(await judge(900, '2025-05-01T15:00:00Z')).toMatchObject({ judgement: 'first', lastRegister: null });
});
