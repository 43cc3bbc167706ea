import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { aController, aMeter, aZone } from '../../support/builders.js';
import { type Somebody, type TestApp, startApp } from '../../support/test-app.js';
import { type FieldDay, assign, close, codeOf, fieldDay } from './field-day.js';

// The rules of delivery: same key and body, same answer; same key and another body, a conflict; an effect and its journal share one fate.

let product: TestApp;
let day: FieldDay;

beforeAll(async () => {
  product = await startApp();
  day = await fieldDay(product);
});
afterAll(() => product.close());

interface Operation {
  readonly key: string;
  readonly kind: string;
  readonly body: Record<string, unknown>;
  readonly payloadVersion?: number;
}
const DEVICE = { id: randomUUID(), name: 'The green phone', appVersion: '1', waiting: 0, photosWaiting: 0, refused: 0 };

const sendRaw = (who: Somebody, operations: readonly object[], device: object = DEVICE) =>
  who.send(
    'mutation($device: DeviceInput!, $operations: [OperationInput!]!) { sendFieldwork(device: $device, operations: $operations) { key verdict problem { code message } other } }',
    { device, operations },
  );
const wire = ({ key, kind, body, payloadVersion = 1 }: Operation, seq: number) => ({
  key,
  seq,
  kind,
  payloadVersion,
  savedAt: '2026-07-06T15:00:00Z',
  body: JSON.stringify(body),
});
const send = async (who: Somebody, ...operations: readonly Operation[]) => (await sendRaw(who, operations.map(wire))).data.sendFieldwork;

const rows = async (sql: string, ...values: unknown[]) => product.database.admin<Record<string, unknown>>(sql, values);

/** A stop with its property and the operation that begins a visit there. */
async function aVisit(date: string) {
  const { id: propertyId } = await day.property();
  const order = await day.given({ propertyId }, date);
  const property = { id: propertyId, organization_id: day.organizationId } as never;
  const arrive: Operation = {
    key: randomUUID(),
    kind: 'arrive',
    body: { stopId: order.stopId, arrivedAt: '2026-07-06T15:00:00Z' },
  };
  return { propertyId, property, order, arrive, visitId: arrive.key };
}
const noteOf = (visitId: string, zoneId: string, more: object = {}): Operation => ({
  key: randomUUID(),
  kind: 'note-zone',
  body: { visitId, zoneId, kind: 'leak', count: 1, ...more },
});
const endOf = (visitId: string, more: object = {}): Operation => ({
  key: randomUUID(),
  kind: 'close-visit',
  body: { visitId, closedAt: '2026-07-06T15:40:00Z', doneNote: 'All set', leftNote: null, workedMinutes: 40, ...more },
});

it('takes a whole stop at once, in its order, and the same again changes nothing', async () => {
  const { arrive, visitId, property, order } = await aVisit('2026-07-06');
  const meter = await aMeter(product.database, property);
  const controller = await aController(product.database, property);
  const zone = await aZone(product.database, property);
  const program = { name: 'A', days: 'Mon Wed', starts: ['05:00'], adjustPercent: null, stations: [{ station: 1, minutes: 8 }] };
  const stop: Operation[] = [
    arrive,
    { key: randomUUID(), kind: 'reading', body: { meterId: meter.id, readAt: '2026-07-06T15:05:00Z', register: 100, note: 'Dew' } },
    {
      key: randomUUID(),
      kind: 'settings',
      body: { controllerId: controller.id, effectiveAt: '2026-07-06T15:10:00Z', record: 'left', state: 'on', programs: [program] },
    },
    noteOf(visitId, zone.id),
    { key: randomUUID(), kind: 'photo', body: { visitId, kind: 'seen', takenAt: '2026-07-06T15:20:00Z', zoneId: zone.id } },
    { key: randomUUID(), kind: 'end-order', body: { workOrderId: order.id, version: order.version, done: true, note: 'Seen to' } },
    endOf(visitId, { materials: [{ name: 'Nozzle', count: 2, unit: null }] }),
  ];
  const first = await send(day.technician, ...stop);
  expect(first).toEqual(stop.map(({ key }) => ({ key, verdict: 'applied', problem: null, other: null })));
  for (let again = 0; again < 3; again += 1) expect(await send(day.technician, ...stop)).toEqual(first);
  const [counts] = await rows(
    `select (select count(*)::int from visit where id = $1) as visits, (select count(*)::int from reading where meter_id = $2) as readings, (select count(*)::int from settings where controller_id = $3) as settings, (select count(*)::int from zone_note where visit_id = $1) as notes, (select count(*)::int from photo where visit_id = $1) as photos, (select state from work_order where id = $4) as state`,
    visitId,
    meter.id,
    controller.id,
    order.id,
  );
  expect(counts).toEqual({ visits: 1, readings: 1, settings: 1, notes: 1, photos: 1, state: 'done' });
  const shown = await day.office.send(
    'query($id: ID!) { stop(id: $id) { visit { id closedAt doneNote workedMinutes materials { name count unit } recordedBy } } }',
    { id: order.stopId },
  );
  expect(shown.data.stop.visit).toMatchObject({
    id: visitId,
    doneNote: 'All set',
    workedMinutes: 40,
    materials: [{ name: 'Nozzle', count: 2, unit: null }],
    recordedBy: 'The technician',
  });
});

it('does it once when 16 deliveries of the same come at the same time', async () => {
  const { arrive, property, visitId } = await aVisit('2026-07-07');
  const meter = await aMeter(product.database, property);
  const reading: Operation = {
    key: randomUUID(),
    kind: 'reading',
    body: { meterId: meter.id, readAt: '2026-07-06T15:05:00Z', register: 100, note: null },
  };
  const answers = await Promise.all(Array.from({ length: 16 }, () => send(day.technician, arrive, reading)));
  for (const answer of answers) expect(answer.map(({ verdict }: { verdict: string }) => verdict)).toEqual(['applied', 'applied']);
  expect(await rows('select register from reading where meter_id = $1', meter.id)).toHaveLength(1);
  expect(await rows('select id from visit where id = $1', visitId)).toHaveLength(1);
});

it('keeps what came first when the same key comes with another body, and says so', async () => {
  const { arrive } = await aVisit('2026-07-08');
  await send(day.technician, arrive);
  const [other] = await send(day.technician, { ...arrive, body: { ...arrive.body, arrivedAt: '2026-07-06T16:00:00Z' } });
  expect(other).toMatchObject({ verdict: 'conflict', problem: { code: 'OPERATION_CONFLICT' } });
  expect(await rows('select arrived_at from visit where id = $1', arrive.key)).toEqual([{ arrived_at: new Date('2026-07-06T15:00:00Z') }]);
});

it('refuses one thing without the others, keeps it as it came, and tries it again when it comes again', async () => {
  const { arrive, visitId, property } = await aVisit('2026-07-09');
  const zone = await aZone(product.database, property);
  const early = noteOf(visitId, zone.id);
  const odd: Operation = { key: randomUUID(), kind: 'note-zone', body: { visitId, zoneId: zone.id, kind: 'dog', count: 1 } };
  const broken = { ...wire(noteOf(visitId, zone.id), 0), body: '{"visitId":' };
  const newer: Operation = { key: randomUUID(), kind: 'arrive', body: {}, payloadVersion: 99 };
  expect((await send(day.technician, early))[0]).toMatchObject({ verdict: 'refused', problem: { code: 'NOT_FOUND' } });
  expect((await send(day.technician, odd, arrive, newer)).map((one: { verdict: string }) => one.verdict)).toEqual([
    'refused',
    'applied',
    'refused',
  ]);
  expect((await sendRaw(day.technician, [broken])).data.sendFieldwork[0]).toMatchObject({
    verdict: 'refused',
    problem: { code: 'VALUE_REFUSED' },
  });
  expect(await rows('select body from field_operation where id = $1', newer.key)).toEqual([{ body: '{}' }]);
  expect((await send(day.technician, early))[0]).toMatchObject({ verdict: 'applied', problem: null });
});

it('knows a note of something else by the name that the phone gave it, whatever its word becomes', async () => {
  const { arrive, visitId, property } = await aVisit('2026-07-09');
  const zone = await aZone(product.database, property);
  const noteId = randomUUID();
  const saying = (word: string, more: object = {}) => noteOf(visitId, zone.id, { kind: 'other', word, noteId, ...more });
  await send(day.lead, arrive, saying('a ho'), saying('a hole'), saying('a hole in the fence', { count: 2 }));
  // An older page gives no name: there its word is.
  await send(
    day.lead,
    noteOf(visitId, zone.id, { kind: 'other', word: 'no lid' }),
    noteOf(visitId, zone.id, { kind: 'other', word: 'no lid' }),
  );
  expect(await rows('select id, word, count from zone_note where visit_id = $1 order by word', visitId)).toEqual([
    { id: noteId, word: 'a hole in the fence', count: 2 },
    { id: expect.any(String), word: 'no lid', count: 1 },
  ]);
  const [odd] = await send(day.lead, saying('x', { noteId: 'my note' }));
  expect(odd).toMatchObject({ verdict: 'refused', problem: { code: 'VALUE_REFUSED' } });
});

it('tells of both when two persons said different things, applies the later, and shows it until somebody has looked', async () => {
  const { arrive, visitId, property, order } = await aVisit('2026-07-10');
  const zone = await aZone(product.database, property);
  await send(day.technician, arrive, noteOf(visitId, zone.id, { count: 2, word: 'By the gate' }), endOf(visitId));
  const note = noteOf(visitId, zone.id, { count: 5 });
  const end = endOf(visitId, { doneNote: 'Valve swapped' });
  expect(await send(day.lead, note, end)).toMatchObject([
    { verdict: 'conflict', other: { count: 2, word: 'By the gate', by: 'The technician' } },
    { verdict: 'conflict', other: { doneNote: 'All set', by: 'The technician' } },
  ]);
  expect(await rows('select count from zone_note where visit_id = $1', visitId)).toEqual([{ count: 5 }]);
  const open = 'query { openOperations { key verdict kind by body } }';
  const mine = async () =>
    (await day.office.send(open)).data.openOperations.filter(({ key }: { key: string }) => [note.key, end.key].includes(key));
  expect(await mine()).toMatchObject([
    { key: note.key, verdict: 'conflict', kind: 'note-zone', by: 'The crewLead' },
    { key: end.key, verdict: 'conflict', kind: 'close-visit' },
  ]);
  await day.office.send('mutation($key: ID!) { settleOperation(key: $key) { key } }', { key: note.key });
  expect(await mine()).toMatchObject([{ key: end.key }]);
  // The office changes the order meanwhile; hands did it all the same.
  await assign(day.office, order, day.crewId, '2026-07-11');
  const done: Operation = {
    key: randomUUID(),
    kind: 'end-order',
    body: { workOrderId: order.id, version: order.version, done: true, note: null },
  };
  expect(await send(day.technician, done)).toMatchObject([{ verdict: 'parallel' }]);
  const { order: dropped } = await aVisit('2026-07-10');
  await close(day.lead, dropped, { done: true, note: 'Mine' });
  const left: Operation = {
    key: randomUUID(),
    kind: 'end-order',
    body: { workOrderId: dropped.id, version: dropped.version, done: false, note: 'No key' },
  };
  expect(await send(day.technician, left)).toMatchObject([
    {
      verdict: 'conflict',
      other: { state: 'done', note: 'Mine', by: 'The crewLead', isSelf: false },
      problem: { code: 'DECIDED_MEANWHILE' },
    },
  ]);
  // Dropped by the office: who, when and why, on no phone.
  const { order: given } = await aVisit('2026-07-10');
  const drop = 'mutation($id: ID!, $version: Int!) { dropWorkOrder(id: $id, version: $version, why: "Sold") { __typename } }';
  await day.office.send(drop, { id: given.id, version: given.version });
  const late: Operation = { key: randomUUID(), kind: 'end-order', body: { workOrderId: given.id, version: given.version, done: true } };
  expect(await send(day.technician, late)).toMatchObject([
    {
      verdict: 'conflict',
      other: { state: 'dropped', note: 'Sold', by: 'The office', phone: null, savedAt: expect.stringMatching(/^2026-07-0[67]T/) },
    },
  ]);
});

it('lets the office choose between two words: what it chooses stands, the other stays in the journal', async () => {
  const { arrive, visitId, property } = await aVisit('2026-07-17');
  const zone = await aZone(product.database, property, { name: 'South lawn' });
  const meter = await aMeter(product.database, property, { name: 'Irrigation' });
  const controller = await aController(product.database, property, { name: 'A' });
  const one = (kind: string, body: Record<string, unknown>): Operation => ({ key: randomUUID(), kind, body });
  const reading = (register: number) => one('reading', { meterId: meter.id, readAt: '2026-07-06T15:05:00Z', register, note: null });
  const off = (state: string) =>
    one('settings', { controllerId: controller.id, effectiveAt: '2026-07-06T15:10:00Z', record: 'found', state, programs: [] });
  const first = [noteOf(visitId, zone.id, { count: 2 }), endOf(visitId), reading(100), off('off')];
  const second = [noteOf(visitId, zone.id, { count: 5 }), endOf(visitId, { doneNote: 'Mine' }), reading(700), off('weather')];
  await send(day.technician, arrive, ...first);
  expect((await send(day.lead, ...second)).map(({ verdict }: { verdict: string }) => verdict)).toEqual(Array(4).fill('conflict'));
  const open = async () =>
    (await day.office.send('{ openOperations { key stands subject property { id } } }')).data.openOperations.filter(
      ({ key }: { key: string }) => second.some((sent) => sent.key === key),
    );
  expect(await open()).toMatchObject([
    { stands: 'sent', subject: 'South lawn', property: { id: property['id' as never] } },
    { stands: 'sent', subject: null },
    { stands: 'other', subject: 'Irrigation' },
    { stands: 'other', subject: 'A' },
  ]);
  const choose = (key: string, word: string, who = day.office) =>
    who.send('mutation($key: ID!, $word: String!) { chooseWord(key: $key, word: $word) { key } }', { key, word });
  expect(codeOf(await choose(second[0]!.key, 'mine'))).toBe('VALUE_REFUSED');
  expect(codeOf(await choose(second[0]!.key, 'other', day.lead))).toBe('NOT_ALLOWED');
  for (const [at, word] of ['other', 'other', 'sent', 'sent'].entries())
    for (let again = 0; again < 2; again += 1)
      expect((await choose(second[at]!.key, word)).data.chooseWord).toEqual({ key: second[at]!.key });
  expect(await open()).toEqual([]);
  expect(await rows('select count from zone_note where visit_id = $1', visitId)).toEqual([{ count: 2 }]);
  expect(await rows('select done_note, worked_minutes from visit where id = $1', visitId)).toEqual([
    { done_note: 'All set', worked_minutes: 40 },
  ]);
  expect(
    await rows('select register, replaced_by_id is null as stands from reading where meter_id = $1 order by register', meter.id),
  ).toEqual([
    { register: 100, stands: false },
    { register: 700, stands: true },
  ]);
  expect(await rows('select state, effective_at from settings where controller_id = $1 order by effective_at', controller.id)).toEqual([
    { state: 'off', effective_at: new Date('2026-07-06T15:10:00Z') },
    { state: 'weather', effective_at: new Date('2026-07-06T15:10:01Z') },
  ]);
  const odd = one('note-zone', { visitId, zoneId: zone.id, kind: 'dog', count: 1 });
  await send(day.technician, odd);
  expect(codeOf(await choose(odd.key, 'sent'))).toBe('NOTHING_TO_CHOOSE');
});

it('makes a finding of what was seen, with its photo, resolved where it was repaired; seen later it has come back', async () => {
  const { arrive, visitId, property, propertyId } = await aVisit('2026-07-13');
  const zone = await aZone(product.database, property, { name: 'North lawn' });
  const leak = noteOf(visitId, zone.id, { count: 2, word: 'Lateral by the path' });
  const head = noteOf(visitId, zone.id, { kind: 'broken head', repaired: true });
  const photo: Operation = {
    key: randomUUID(),
    kind: 'photo',
    body: { visitId, kind: 'seen', takenAt: '2026-07-06T15:20:00Z', zoneId: zone.id, noteKind: 'leak' },
  };
  for (let again = 0; again < 2; again += 1) await send(day.technician, arrive, leak, head, photo);
  const asked = `query($id: ID!) { property(id: $id) { findings { kind state zoneId fromOn cameBack resolvedWith says { code details } photos { id } decidedBy } } }`;
  const found = async () => (await day.office.send(asked, { id: propertyId })).data.property.findings;
  const of = async (what: string) =>
    (await found()).filter(({ says }: { says: { details: { what: string } } }) => says.details.what === what);
  expect(await of('leak')).toEqual([
    {
      ...{ kind: 'seen on site', state: 'open', zoneId: zone.id, fromOn: '2026-07-06', cameBack: 0, resolvedWith: null, decidedBy: null },
      says: { code: 'seen on site', details: { what: 'leak', count: 2, word: 'Lateral by the path', zoneId: zone.id } },
      photos: [{ id: photo.key }],
    },
  ]);
  expect(await of('broken head')).toMatchObject([{ state: 'resolved', resolvedWith: 'repaired on the spot', decidedBy: 'The technician' }]);
  await send(day.technician, noteOf(visitId, zone.id, { count: 3, repaired: true, word: 'Coupling' }));
  expect(await of('leak')).toMatchObject([{ state: 'resolved', resolvedWith: 'repaired on the spot: Coupling', cameBack: 0 }]);
  await send(day.technician, noteOf(visitId, zone.id, { count: 3 }));
  expect(await of('leak')).toMatchObject([{ state: 'open', resolvedWith: null, says: { details: { count: 3 } } }]);
  // A week later the head is broken again.
  const order = await day.given({ propertyId }, '2026-07-14');
  const later: Operation = { key: randomUUID(), kind: 'arrive', body: { stopId: order.stopId, arrivedAt: '2026-07-14T15:00:00Z' } };
  await send(day.technician, later, noteOf(later.key, zone.id, { kind: 'broken head' }));
  expect(await of('broken head')).toMatchObject([{ state: 'open', cameBack: 1, fromOn: '2026-07-06' }]);
  // What only eyes saw stays when accounts are computed anew.
  const meter = await aMeter(product.database, property);
  await send(day.technician, {
    key: randomUUID(),
    kind: 'reading',
    body: { meterId: meter.id, readAt: '2026-07-14T15:05:00Z', register: 1 },
  });
  await product.drain();
  expect(await found()).toHaveLength(2);
});

it('puts the flow that a test told on the zone, once, the latest test last, and keeps a register that is too coarse off it', async () => {
  const { arrive, visitId, property } = await aVisit('2026-07-15');
  const meter = await aMeter(product.database, property, { unit: 'gal', digits: 6, resolution: 1 });
  const zone = await aZone(product.database, property, { flow_l_per_min: 50, flow_source: 'nameplate' });
  const flow = (more: object = {}): Operation => ({
    key: randomUUID(),
    kind: 'flow-test',
    body: {
      ...{ visitId, zoneId: zone.id, testedAt: '2026-07-06T15:20:00Z', minutes: 4, meterId: meter.id },
      ...{ registerBefore: 999_960, registerAfter: 40, word: 'Only this zone ran' },
      ...more,
    },
  });
  const tested = flow();
  for (let again = 0; again < 2; again += 1) expect(await send(day.technician, arrive, tested)).toMatchObject([{}, { verdict: 'applied' }]);
  const [changed] = await rows('select flow_l_per_min, flow_source, version from zone where id = $1', zone.id);
  // 80 gal through the register's highest number in 4 min are 20 gpm; 1 gal is 3.785411784 L (231 cubic inches, exact).
  expect(changed).toEqual({ flow_l_per_min: expect.closeTo(20 * 3.785411784, 6) as number, flow_source: 'measured', version: 2 });
  const [coarse, older, wrong] = await send(
    day.technician,
    flow({ registerBefore: 100, registerAfter: 102, testedAt: '2026-07-06T16:00:00Z' }),
    flow({ registerBefore: 100, registerAfter: 500, testedAt: '2026-07-06T15:10:00Z' }),
    flow({ registerBefore: 100, registerAfter: 5_000_000 }),
  );
  expect([coarse, older]).toMatchObject([{ verdict: 'applied' }, { verdict: 'applied' }]);
  expect(wrong).toMatchObject({ verdict: 'refused', problem: { code: 'VALUE_REFUSED' } });
  expect(await rows('select flow_l_per_min, flow_source, version from zone where id = $1', zone.id)).toEqual([changed]);
  const [visit] = (
    await day.office.send('query($id: ID!) { property(id: $id) { visits { zoneTests { id kind onRecord flowLPerMin by } } } }', {
      id: property['id' as never],
    })
  ).data.property.visits;
  expect(visit.zoneTests).toMatchObject([
    { onRecord: false },
    { id: tested.key, kind: 'flow', onRecord: true, by: 'The technician' },
    { onRecord: false },
  ]);
});

it('puts the evenness that cans told on the zone where there are enough of them', async () => {
  const { arrive, visitId, property } = await aVisit('2026-07-16');
  const zone = await aZone(product.database, property);
  const cans = (catchesMl: readonly number[], more: object = {}): Operation => ({
    key: randomUUID(),
    kind: 'catch-test',
    body: { visitId, zoneId: zone.id, testedAt: '2026-07-06T15:20:00Z', minutes: 10, catchesMl, mouthM2: 0.0107, ...more },
  });
  // The fifteen cans of tests/golden/uniformity, and their published low-quarter uniformity.
  const published = [47, 42, 45, 24, 13, 26, 33, 34, 27, 30, 40, 44, 32, 12, 12];
  expect(await send(day.technician, arrive, cans([20, 20, 20, 30], { testedAt: '2026-07-06T15:40:00Z' }), cans(published))).toMatchObject([
    { verdict: 'applied' },
    { verdict: 'applied' },
    { verdict: 'applied' },
  ]);
  const [measured] = await rows('select du_lq, precip_mm_per_h from zone where id = $1', zone.id);
  expect(measured!['du_lq']).toBeCloseTo(0.4962, 3);
  expect(measured!['precip_mm_per_h']).toBeCloseTo((60 * (461 / 15)) / 1000 / (10 * 0.0107), 6);
  expect(await send(day.technician, cans([1, 2, 3]), cans([0, 0, 0, 0]))).toMatchObject([{ verdict: 'refused' }, { verdict: 'refused' }]);
});

it('lets the office see what is still on each phone, and nobody else', async () => {
  const id = randomUUID();
  await sendRaw(day.technician, [], { ...DEVICE, id, waiting: 3, photosWaiting: 7, refused: 1, oldestWaitingAt: '2026-07-06T15:00:00Z' });
  const asked = 'query { devices { id name person waiting photosWaiting refused oldestWaitingAt } }';
  expect((await day.office.send(asked)).data.devices.find((device: { id: string }) => device.id === id)).toEqual({
    id,
    name: 'The green phone',
    person: 'The technician',
    waiting: 3,
    photosWaiting: 7,
    refused: 1,
    oldestWaitingAt: '2026-07-06T15:00:00.000Z',
  });
  expect((await day.lead.send(asked)).errors[0]!.extensions.code).toBe('NOT_ALLOWED');
});

it('lists no browser that held nothing when it was last heard of, 90 days ago; one that held something stays', async () => {
  const [empty, full] = [randomUUID(), randomUUID()];
  const listed = async () => (await day.office.send('{ devices { id } }')).data.devices.map((device: { id: string }) => device.id);
  await sendRaw(day.technician, [], { ...DEVICE, id: empty });
  await sendRaw(day.technician, [], { ...DEVICE, id: full, photosWaiting: 1 });
  const heard = (days: number) =>
    product.database.admin('update device set heard_at = heard_at - make_interval(days => $2) where id = any($1)', [[empty, full], days]);
  await heard(89);
  expect(await listed()).toEqual(expect.arrayContaining([empty, full]));
  await heard(2);
  expect(await listed()).toContain(full);
  expect(await listed()).not.toContain(empty);
});

it('tells the office’s open pages that something happened, once it is kept, and nobody else', async () => {
  const listen = async (who: Somebody) => {
    const ending = new AbortController();
    const response = await fetch(`${product.url}/api/live/fieldwork`, { headers: { cookie: who.cookie }, signal: ending.signal });
    const read = async (): Promise<string> => {
      const reader = response.body!.pipeThrough(new TextDecoderStream()).getReader();
      let heard = '';
      for (;;) {
        const { value, done } = await reader.read();
        heard += value ?? '';
        if (done || heard.includes('data:')) return heard;
      }
    };
    return { response, read, end: () => ending.abort() };
  };
  const elsewhere = await product.somebody(await product.organization('Elsewhere'), 'office');
  const [office, stranger] = [await listen(day.office), await listen(elsewhere)];
  expect(office.response.headers.get('content-type')).toBe('text/event-stream');
  const { arrive } = await aVisit('2026-07-18');
  await send(day.technician, arrive);
  expect(await office.read()).toContain('data: changed');
  // The stranger hears of their own organization only: its first word is the one below.
  const first = stranger.read();
  await elsewhere.send('mutation { createCrew(input: { name: "Theirs" }) { __typename } }');
  expect((await first).match(/data:/g)).toHaveLength(1);
  // The office goes on listening: the product ends all the same when the tests are done.
  stranger.end();
  const refused = await fetch(`${product.url}/api/live/fieldwork`, { headers: { cookie: day.technician.cookie } });
  expect(refused.status).toBe(403);
  expect((await fetch(`${product.url}/api/live/fieldwork`)).status).toBe(401);
});

it('keeps at most six pages of a person open: the oldest is told and closed, others go on', async () => {
  const many = await product.somebody(day.organizationId, 'office');
  const ending = new AbortController();
  const open = async (who: Somebody) =>
    (await fetch(`${product.url}/api/live/fieldwork`, { headers: { cookie: who.cookie }, signal: ending.signal })).body!.pipeThrough(
      new TextDecoderStream(),
    );
  const read = async (stream: ReadableStream<string>, until: string) => {
    let heard = '';
    for await (const piece of stream) {
      heard += piece;
      if (heard.includes(until)) break;
    }
    return heard;
  };
  const another = await open(day.office);
  const pages = [];
  for (let count = 0; count < 7; count += 1) pages.push(await open(many));
  // It ends by itself: nothing more is to be read.
  expect(await read(pages[0]!, 'nothing that is ever said')).toMatch(/event: enough\ndata: .*\n\n$/);
  await day.office.send('mutation { createCrew(input: { name: "Late" }) { __typename } }');
  for (const page of [another, ...pages.slice(1)]) expect(await read(page, 'data:')).toMatch(/data: changed\n\n$/);
  ending.abort();
});

it('takes at most 200 at once', async () => {
  const many = Array.from({ length: 201 }, () => wire({ key: randomUUID(), kind: 'arrive', body: {} }, 0));
  expect((await sendRaw(day.technician, many)).errors[0]!.extensions.code).toBe('BATCH_TOO_LARGE');
});
