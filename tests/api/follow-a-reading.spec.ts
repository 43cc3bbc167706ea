import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type Built, aCrew, aMeter, aProperty, aStop, inCrew } from '../support/builders.js';
import { type Somebody, type TestApp, startApp } from '../support/test-app.js';

// The stops of docs/follow-a-reading.md, walked over the wire.
let product: TestApp;
let technician: Somebody;
let owner: Somebody;
let property: Built;
let meter: Built;

const RECORD = `mutation($input: ReadingInput!) { recordReading(input: $input) { __typename
  ... on Reading { id register judgement litresSinceLast } ... on ReadingConflict { kept { id register } } } }`;
const READ = `query($id: ID!) { property(id: $id) { name meters { readings { id register judgement recordedBy findings { kind says { code details } } } } } }`;

/** NIST SP 811 (2008), Appendix B.8: 1 ft³ = 28.316 846 592 L, so a CCF is a hundred times that. */
const LITRES_PER_CCF = 2831.6846592;

const aRecord = (day: string, register: number) => ({
  deviceRecordId: randomUUID(),
  meterId: meter.id,
  readAt: `${day}T16:00:00.000Z`,
  register,
});
const send = async (input: Record<string, unknown>) => (await technician.send(RECORD, { input })).data.recordReading;
const readAs = async (who: Somebody) => (await who.send(READ, { id: property.id })).data?.property ?? null;

const first = { day: '2026-07-06', register: 1200 };
const second = { day: '2026-07-13', register: 1270 };
const rewound = { day: '2026-07-20', register: 1190 };

beforeAll(async () => {
  product = await startApp();
  const organization = await product.organization('Quiet Water Grounds');
  // What is found of a reading is news for some weeks: the organization's world stands still soon after the last one.
  await product.database.admin(`update organization set stands_still_on = '2026-07-22' where id = $1`, [organization]);
  owner = await product.somebody(organization, 'owner');
  technician = await product.somebody(organization, 'technician');
  property = await aProperty(product.database, organization, { name: 'Tamarack Row' });
  meter = await aMeter(product.database, property, { unit: 'CCF', digits: 6 });
  const crew = await aCrew(product.database, organization);
  await inCrew(product.database, crew, technician.memberId);
  await aStop(product.database, crew, property, { day: first.day });
});
afterAll(() => product.close());

it('follows a reading from the device to the finding that it opens', async () => {
  // Sent: it becomes a row, judged beside the one before it.
  const input = aRecord(second.day, second.register);
  expect(await send(aRecord(first.day, first.register))).toMatchObject({
    __typename: 'Reading',
    judgement: 'first',
    litresSinceLast: null,
  });
  const kept = await send(input);
  expect(kept).toEqual({
    __typename: 'Reading',
    id: expect.any(String),
    register: 1270,
    judgement: 'ok',
    litresSinceLast: expect.closeTo(70 * LITRES_PER_CCF, 6),
  });

  // Sent again, for the answer was lost on the way: the same reading. With another content: what is kept.
  expect(await send(input)).toEqual(kept);
  expect(await send({ ...input, register: 1280 })).toEqual({ __typename: 'ReadingConflict', kept: { id: kept.id, register: 1270 } });
  expect((await readAs(owner)).meters[0].readings).toHaveLength(2);

  // A rewound one is kept too, and says so at once.
  const wrong = await send(aRecord(rewound.day, rewound.register));
  expect(wrong).toMatchObject({ __typename: 'Reading', judgement: 'lower than last', litresSinceLast: null });

  // Its judgement becomes a finding when the property's accounts have been computed again.
  await product.drain();

  // Read as its owner: newest first, with what is found of it.
  const seen = await readAs(owner);
  expect(seen.meters[0].readings.map(({ register }: { register: number }) => register)).toEqual([1190, 1270, 1200]);
  expect(seen.meters[0].readings[0]).toEqual({
    id: wrong.id,
    register: 1190,
    judgement: 'lower than last',
    recordedBy: 'The technician',
    findings: [
      {
        kind: 'doubtful reading',
        says: {
          code: 'lower than last',
          details: expect.objectContaining({ meterId: meter.id, previousRegister: 1270, nextRegister: 1190 }),
        },
      },
    ],
  });
  expect(seen.meters[0].readings[1].findings).toEqual([]);

  // Corrected: another reading stands in its place, the one before keeps its row, and there is nothing to doubt any more.
  const correction = { ...aRecord(rewound.day, 1340), replacesId: wrong.id };
  expect(await send(correction)).toMatchObject({ __typename: 'Reading', register: 1340, judgement: 'ok' });
  await product.drain();
  const after = await owner.send('query($id: ID!) { findings(propertyId: $id, kind: "doubtful reading") { state } }', { id: property.id });
  expect(after.data.findings).toEqual([{ state: 'resolved' }]);
});

it('shows it to no stranger: not to another organization, not to another crew, not without a session', async () => {
  expect(await readAs(await product.somebody(await product.organization(), 'owner'))).toBeNull();
  expect(await readAs(await product.somebody(technician.organizationId, 'technician'))).toBeNull();
  expect((await product.send(READ, { id: property.id })).errors[0]!.extensions.code).toBe('SIGN_IN_NEEDED');
  expect(await readAs(technician)).toMatchObject({ name: 'Tamarack Row' });
});
