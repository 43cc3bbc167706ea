import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { aController, aMeter, aZone } from '../../support/builders.js';
import { type TestApp, startApp } from '../../support/test-app.js';
import { type FieldDay, assign, codeOf, fieldDay } from './field-day.js';
import { said, sendFieldwork as send } from './sent-operations.js';

// Two phones and an office that do not know of each other: what was said by one is not lost by what another says.

let product: TestApp;
let day: FieldDay;

beforeAll(async () => {
  product = await startApp();
  day = await fieldDay(product);
});
afterAll(() => product.close());

const rows = async (sql: string, ...values: unknown[]) => product.database.admin<Record<string, unknown>>(sql, values);
const arrival = (stopId: string | null, at = '2026-07-06T15:00:00Z') => said('arrive', { stopId, arrivedAt: at });

async function aStop(date = '2026-07-06') {
  const { id: propertyId } = await day.property();
  const order = await day.given({ propertyId }, date);
  const zone = await aZone(product.database, { id: propertyId, organization_id: day.organizationId } as never);
  const note = (visitId: string, count: number, more: object = {}) =>
    said('note-zone', { visitId, zoneId: zone.id, kind: 'leak', count, ...more });
  return { propertyId, order, zone, note };
}
const open = async () =>
  (await day.office.send('{ openOperations { key kind verdict body other problem { code details } property { id } } }')).data
    .openOperations as readonly { key: string; verdict: string; body: string; other: object; problem: { details: object } }[];
const isOpen = async (key: string) => (await open()).some((one) => one.key === key);
const settle = (key: string) => day.office.send('mutation($key: ID!) { settleOperation(key: $key) { key } }', { key });
const verdicts = (told: readonly { verdict: string }[]) => told.map(({ verdict }) => verdict);

it('has one visit where two phones arrive at a stop, whoever is heard first, and all that both tell is of it', async () => {
  const { order, zone, note } = await aStop();
  const [late, early] = [arrival(order.stopId, '2026-07-06T15:10:00Z'), arrival(order.stopId, '2026-07-06T15:02:00Z')];
  const seen = note(late.key, 2);
  await send(day.technician, [late, seen]);
  const other = said('note-zone', { visitId: early.key, zoneId: zone.id, kind: 'clogged', count: 1 });
  const photo = said('photo', { visitId: early.key, kind: 'other', takenAt: '2026-07-06T15:20:00Z' });
  const told = await send(day.lead, [early, other, photo]);
  expect(told).toMatchObject([
    { verdict: 'applied', other: { visitId: late.key, by: 'The technician' } },
    { verdict: 'applied' },
    { verdict: 'applied' },
  ]);
  const end = said('close-visit', { visitId: early.key, closedAt: '2026-07-06T15:40:00Z', doneNote: 'All set', leftNote: null });
  expect(await send(day.lead, [early, end])).toMatchObject([told[0]!, { verdict: 'applied' }]);
  // Sent again, and another phone of the crew that comes after the stop was closed: it stays closed.
  await send(day.technician, [late, arrival(order.stopId, '2026-07-06T16:00:00Z')]);
  const { data } = await day.office.send(
    'query($id: ID!) { stop(id: $id) { visit { id arrivedAt closedAt doneNote zoneNotes { kind count } photos { id } } } }',
    { id: order.stopId },
  );
  expect(data.stop.visit).toMatchObject({
    ...{ id: late.key, arrivedAt: '2026-07-06T15:02:00.000Z', closedAt: '2026-07-06T15:40:00.000Z', doneNote: 'All set' },
    photos: [{ id: photo.key }],
  });
  expect(data.stop.visit.zoneNotes).toHaveLength(2);
  expect(await rows('select id from visit where stop_id = $1', order.stopId)).toHaveLength(1);
});

it('makes one visit of sixteen arrivals at the same time', async () => {
  const { order } = await aStop();
  const all = Array.from({ length: 16 }, () => arrival(order.stopId));
  const told = await Promise.all(all.map((one, at) => send(at % 2 ? day.lead : day.technician, [one])));
  expect(verdicts(told.flat())).toEqual(all.map(() => 'applied'));
  expect(await rows('select id from visit where stop_id = $1', order.stopId)).toHaveLength(1);
});

it('says nothing against a record that gave way to what others kept at the same moment: sent again it is taken', async () => {
  const { order, note, propertyId } = await aStop();
  const come = arrival(order.stopId);
  const { id: other } = await aZone(product.database, { id: propertyId, organization_id: day.organizationId } as never);
  const there = note(come.key, 1, { zoneId: other });
  await send(day.technician, [come, note(come.key, 1), there]);
  const noteOf = 'update zone_note set count = 7 where visit_id = $1 and zone_id';
  const office = new pg.Client({ connectionString: product.database.adminUrl });
  await office.connect();
  try {
    await office.query('begin');
    await office.query(`${noteOf} = $2`, [come.key, other]);
    // The phone's first waits for nobody, its second for the office; then the office wants the first.
    const batch = [note(come.key, 2), note(come.key, 3, { zoneId: other })];
    const sent = send(day.lead, batch).then(
      () => 'taken',
      (problem: Error) => problem.message,
    );
    const isWaiting = 'select from pg_stat_activity where datname = current_database() and wait_event_type = $1';
    await expect.poll(() => rows(isWaiting, 'Lock'), { timeout: 20_000 }).toHaveLength(1);
    await office.query(`${noteOf} <> $2`, [come.key, other]);
    expect(await sent).toContain('"BUSY"');
    expect(await rows('select id from field_operation where id = any($1)', [batch.map(({ key }) => key)])).toEqual([]);
    await office.query('commit');
    expect(verdicts(await send(day.lead, batch))).not.toContain('refused');
    expect(await rows('select count from zone_note where visit_id = $1 order by count', come.key)).toEqual([{ count: 2 }, { count: 3 }]);
  } finally {
    await office.end();
  }
});

it('takes what is beside a record that no database can hold', async () => {
  const { order, note } = await aStop();
  const come = arrival(order.stopId);
  // Half of a character of two at the place where what was found is cut; a zero byte in a word, in the body and in a kind.
  const long = `${'x'.repeat(79)}😀${'x'.repeat(6000)}`;
  const bad = [
    note(come.key, 1, { word: long }),
    note(come.key, 1, { word: `a\u0000b` }),
    note(come.key, 1, { word: '\ud83d' }),
    said('note-zone', `{"visitId":"\u0000"}`),
    said('a\u0000b', {}),
    said('arrive', 'x'.repeat(79) + '😀'),
    { ...note(come.key, 1), seq: -1 },
    said('arrive', {}, { payloadVersion: 0 }),
  ];
  const good = note(come.key, 3);
  const told = await send(day.technician, [come, ...bad, good]);
  expect(verdicts(told)).toEqual([
    'applied',
    'refused',
    'refused',
    'applied',
    'refused',
    'refused',
    'refused',
    'applied',
    'refused',
    'applied',
  ]);
  const kept = await rows('select id from field_operation where id = any($1)', [...bad.map(({ key }) => key), good.key]);
  expect(kept).toHaveLength(bad.length + 1);
});

it('keeps in the journal what comes under a name that is taken, and shows it to the office', async () => {
  const { order, note } = await aStop();
  const come = arrival(order.stopId);
  const first = note(come.key, 1);
  const second = { ...note(come.key, 7), key: first.key };
  await send(day.technician, [come, first]);
  for (let again = 0; again < 2; again += 1) expect(await send(day.technician, [second])).toMatchObject([{ verdict: 'conflict' }]);
  const shown = (await open()).filter(({ body }) => body === JSON.stringify(second.body));
  expect(shown).toMatchObject([{ verdict: 'conflict', problem: { details: { key: first.key } } }]);
  await settle(shown[0]!.key);
  await send(day.technician, [second]);
  expect(await isOpen(shown[0]!.key)).toBe(false);
});

it('shows again what was seen as refused and is a conflict now', async () => {
  const { order, note } = await aStop();
  const come = arrival(order.stopId);
  const early = note(come.key, 4);
  expect(verdicts(await send(day.technician, [early]))).toEqual(['refused']);
  await settle(early.key);
  expect(await isOpen(early.key)).toBe(false);
  await send(day.lead, [come, note(come.key, 2)]);
  expect(verdicts(await send(day.technician, [early]))).toEqual(['conflict']);
  expect(await isOpen(early.key)).toBe(true);
});

it('lets a technician end a stop to which they came, whoever of the crew was there first', async () => {
  const { order } = await aStop();
  const [first, later] = [arrival(order.stopId), arrival(order.stopId, '2026-07-06T15:05:00Z')];
  await send(day.lead, [first]);
  const ended = said('close-visit', { visitId: later.key, closedAt: '2026-07-06T15:40:00Z', doneNote: 'By two', leftNote: null });
  expect(verdicts(await send(day.technician, [later, ended]))).toEqual(['applied', 'applied']);
  expect(await rows('select done_note from visit where id = $1', first.key)).toEqual([{ done_note: 'By two' }]);
});

// docs/decisions/0016
it('keeps who came and who ended a stop, and lets nobody of another crew end it by saying that they came', async () => {
  const { order } = await aStop();
  const [first, later, strange] = [arrival(order.stopId), arrival(order.stopId, '2026-07-06T15:05:00Z'), arrival(order.stopId)];
  const ended = (visitId: string) => said('close-visit', { visitId, closedAt: '2026-07-06T15:40:00Z', doneNote: 'Done', leftNote: null });
  await send(day.lead, [first]);
  expect(verdicts(await send(day.stranger, [strange, ended(strange.key), ended(first.key)]))).toEqual(['refused', 'refused', 'refused']);
  expect(verdicts(await send(day.technician, [later, ended(later.key)]))).toEqual(['applied', 'applied']);
  const kept = await rows(
    `select (select array_agg(person.name order by arrival.arrived_at) from arrival join person on person.id = arrival.person_id where visit_id = visit.id) as came, person.name as "endedBy"
       from visit join person on person.id = visit.closed_by where visit.id = $1`,
    first.key,
  );
  expect(kept).toEqual([{ came: ['The crewLead', 'The technician'], endedBy: 'The technician' }]);
});

it('lets a technician end a stop at which they recorded something, though only the lead’s phone said that it came', async () => {
  const { order, note } = await aStop();
  const come = arrival(order.stopId);
  const ended = said('close-visit', { visitId: come.key, closedAt: '2026-07-06T15:40:00Z', doneNote: 'Heads set', leftNote: null });
  await send(day.lead, [come]);
  expect(verdicts(await send(day.technician, [ended]))).toEqual(['refused']);
  expect(verdicts(await send(day.technician, [note(come.key, 1), ended]))).toEqual(['applied', 'applied']);
});

describe('an arrival by mistake', () => {
  const withdrawal = (come: { readonly key: string }) => said('withdraw-visit', { visitId: come.key });
  const stopNow = async (stopId: string | null) =>
    (
      await day.office.send(
        'query($id: ID!) { stop(id: $id) { visit { id arrivedAt } withdrawnVisit { id withdrawnAt recordedBy } property { visits { id } } } }',
        { id: stopId },
      )
    ).data.stop;

  it('is taken back: kept, shown to the office, and no visit', async () => {
    const { order } = await aStop();
    const come = arrival(order.stopId);
    const back = withdrawal(come);
    // A late copy of the arrival does not bring it back.
    for (let again = 0; again < 2; again += 1) expect(verdicts(await send(day.lead, [come, back]))).toEqual(['applied', 'applied']);
    expect(await stopNow(order.stopId)).toEqual({
      visit: null,
      withdrawnVisit: { id: come.key, withdrawnAt: expect.any(String), recordedBy: 'The crewLead' },
      property: { visits: [] },
    });
  });

  it('begins anew with who comes then, and stands where something was done', async () => {
    const { order, note } = await aStop();
    const [come, later] = [arrival(order.stopId), arrival(order.stopId, '2026-07-06T17:00:00Z')];
    await send(day.lead, [come, withdrawal(come), later]);
    expect(await stopNow(order.stopId)).toMatchObject({ visit: { arrivedAt: '2026-07-06T17:00:00.000Z' }, withdrawnVisit: null });
    const other = await aStop();
    const first = arrival(other.order.stopId);
    await send(day.lead, [first, withdrawal(first), other.note(first.key, 2)]);
    expect(await stopNow(other.order.stopId)).toMatchObject({ visit: { id: first.key }, withdrawnVisit: null });
    expect(await send(day.lead, [withdrawal(first)])).toMatchObject([{ verdict: 'refused', problem: { code: 'VISIT_NOT_EMPTY' } }]);
    expect(verdicts(await send(day.lead, [note(later.key, 1)]))).toEqual(['applied']);
  });

  it('is taken back late, though another crew, and its own lead at a later stop, have read the meter there since; not where they read it then', async () => {
    const { propertyId, order } = await aStop();
    const meter = await aMeter(product.database, { id: propertyId, organization_id: day.organizationId } as never);
    const read = (at: string, register: number) => said('reading', { meterId: meter.id, readAt: at, register, note: null });
    const come = arrival(order.stopId);
    await send(day.lead, [come]);
    const elsewhere = (await assign(day.office, await day.order({ propertyId }), day.otherCrewId, '2026-07-07')).data.assignWorkOrder;
    const later = (await assign(day.office, await day.order({ propertyId }), day.crewId, '2026-07-08')).data.assignWorkOrder;
    const theirs = [arrival(elsewhere.stopId, '2026-07-07T15:00:00Z'), read('2026-07-07T15:05:00Z', 100)];
    expect(verdicts(await send(day.stranger, theirs))).toEqual(['applied', 'applied']);
    const next = arrival(later.stopId, '2026-07-08T15:00:00Z');
    expect(verdicts(await send(day.lead, [next, read('2026-07-08T15:05:00Z', 110)]))).toEqual(['applied', 'applied']);
    expect(await send(day.lead, [withdrawal(next)])).toMatchObject([{ verdict: 'refused', problem: { code: 'VISIT_NOT_EMPTY' } }]);
    expect(verdicts(await send(day.lead, [withdrawal(come)]))).toEqual(['applied']);
  });

  it('leaves the visit to who else of the crew came, and is nobody else’s to take back', async () => {
    const { order } = await aStop();
    const [come, joined] = [arrival(order.stopId), arrival(order.stopId, '2026-07-06T15:05:00Z')];
    await send(day.lead, [come]);
    expect(await send(day.technician, [withdrawal(come)])).toMatchObject([{ verdict: 'refused', problem: { code: 'NOT_ALLOWED' } }]);
    expect(await send(day.technician, [joined])).toMatchObject([{ verdict: 'applied', other: { visitId: come.key, isSelf: false } }]);
    // Who came first and says so once more hears their own word.
    const again = arrival(order.stopId, '2026-07-06T15:07:00Z');
    expect(await send(day.lead, [again])).toMatchObject([{ verdict: 'applied', other: { visitId: come.key, isSelf: true } }]);
    expect(verdicts(await send(day.lead, [withdrawal(again)]))).toEqual(['applied']);
    expect(await send(day.technician, [withdrawal(come)])).toMatchObject([{ verdict: 'refused', problem: { code: 'VISIT_NOT_EMPTY' } }]);
    expect(verdicts(await send(day.lead, [withdrawal(come)]))).toEqual(['applied']);
    expect(await stopNow(order.stopId)).toMatchObject({ visit: { id: come.key, arrivedAt: '2026-07-06T15:05:00.000Z' } });
    // A whole crew at the wrong stop: the last of them takes the visit with them.
    expect(verdicts(await send(day.technician, [withdrawal(joined)]))).toEqual(['applied']);
    expect(await stopNow(order.stopId)).toMatchObject({ visit: null, withdrawnVisit: { id: come.key } });
  });
});

it('lets the office take in what was refused, or says why it cannot', async () => {
  const { order, note } = await aStop();
  const come = arrival(order.stopId);
  const closing = said('close-visit', {
    visitId: come.key,
    closedAt: '2026-07-06T15:40:00Z',
    doneNote: 'Closed by the other',
    leftNote: null,
  });
  const odd = note(come.key, 0);
  await send(day.lead, [come]);
  expect(await send(day.technician, [closing, odd])).toMatchObject([
    { verdict: 'refused', problem: { code: 'NOT_ALLOWED' } },
    { verdict: 'refused', problem: { code: 'VALUE_REFUSED' } },
  ]);
  const takeIn = (key: string, who = day.office) =>
    who.send('mutation($key: ID!) { takeInOperation(key: $key) { verdict problem { code } } }', { key });
  expect(codeOf(await takeIn(closing.key, day.lead))).toBe('NOT_ALLOWED');
  for (let again = 0; again < 2; again += 1)
    expect((await takeIn(closing.key)).data.takeInOperation).toEqual({ verdict: 'applied', problem: null });
  expect((await takeIn(odd.key)).data.takeInOperation).toEqual({ verdict: 'refused', problem: { code: 'VALUE_REFUSED' } });
  expect(await rows('select done_note from visit where id = $1', come.key)).toEqual([{ done_note: 'Closed by the other' }]);
  expect([await isOpen(closing.key), await isOpen(odd.key)]).toEqual([false, true]);
});

it('keeps both notes of an order that was done twice, and the time at which it was done', async () => {
  const { propertyId, order } = await aStop();
  const done = (version: number, note: string | null, more: object = {}) =>
    said('end-order', { workOrderId: order.id, version, done: true, note, ...more }, { savedAt: '2026-07-05T16:00:00Z' });
  expect(verdicts(await send(day.technician, [done(order.version, 'Nozzles')]))).toEqual(['applied']);
  const second = done(order.version, 'Changed the decoder too');
  expect(await send(day.lead, [second])).toMatchObject([{ verdict: 'conflict', other: { doneNote: 'Nozzles', by: 'The technician' } }]);
  expect(await isOpen(second.key)).toBe(true);
  const [kept] = await rows('select state, done_note, done_at, version from work_order where id = $1', order.id);
  expect(kept).toMatchObject({ state: 'done', done_note: 'Changed the decoder too', done_at: new Date('2026-07-05T16:00:00Z') });
  // Nothing more is told: nothing changes. Who knows the order as it is adds to it.
  expect(verdicts(await send(day.lead, [done(order.version, null), done(order.version, 'Changed the decoder too')]))).toEqual([
    'applied',
    'applied',
  ]);
  const finding = await day.finding(propertyId);
  await product.database.admin('update work_order set finding_id = $2 where id = $1', [order.id, finding.id]);
  expect(verdicts(await send(day.lead, [done(kept!['version'] as number, 'And the wire', { resolvesFinding: true })]))).toEqual([
    'applied',
  ]);
  expect(await rows('select state, resolved_with from finding where id = $1', finding.id)).toEqual([
    { state: 'resolved', resolved_with: 'And the wire' },
  ]);
});

it('leaves an order where the office has sent it meanwhile, and shows what ran beside', async () => {
  const { order } = await aStop();
  const left = () => said('end-order', { workOrderId: order.id, version: order.version, done: false, note: 'No key' });
  const moved = (await assign(day.office, order, day.crewId, '2026-07-25')).data.assignWorkOrder;
  const late = left();
  expect(await send(day.technician, [late])).toMatchObject([
    {
      verdict: 'conflict',
      other: { state: 'given out', day: '2026-07-25', by: 'The office', phone: null },
      problem: { code: 'DECIDED_MEANWHILE' },
    },
  ]);
  expect(await isOpen(late.key)).toBe(true);
  expect(await rows('select state, stop_id from work_order where id = $1', order.id)).toEqual([
    { state: 'given out', stop_id: moved.stopId },
  ]);
  // Another crew's by now: what was left is left to them, what hands did is done.
  const theirs = (await assign(day.office, moved, day.otherCrewId, '2026-07-26')).data.assignWorkOrder;
  expect(await send(day.technician, [left()])).toMatchObject([
    { verdict: 'conflict', other: { state: 'given out', day: '2026-07-26', by: 'The office' } },
  ]);
  const { order: other } = await aStop();
  await assign(day.office, other, day.otherCrewId, '2026-07-26');
  const hands = said('end-order', { workOrderId: other.id, version: other.version, done: true, note: 'Nozzles' });
  expect(await send(day.technician, [hands])).toMatchObject([{ verdict: 'parallel', other: { changedBy: 'The office' } }]);
  expect(await rows('select state, done_note from work_order where id = $1', other.id)).toEqual([{ state: 'done', done_note: 'Nozzles' }]);
  // Sent back to the stop that the phone knows, the crew's word holds; the office sees that it had changed something.
  await assign(day.office, theirs, day.crewId, '2026-07-06');
  const beside = left();
  expect(verdicts(await send(day.technician, [beside]))).toEqual(['parallel']);
  expect(await isOpen(beside.key)).toBe(true);
});

it('tells of an older word over a newer one of the same person, and not of a correction that knew what it corrects', async () => {
  const { order, note } = await aStop();
  const come = arrival(order.stopId);
  // About the midnight at which the day here begins: whenever this runs, neither lies ahead.
  const at = (time: string) => `2026-07-06T${time}:00Z`;
  const newer = { ...note(come.key, 5), savedAt: at('07:00') };
  const older = { ...note(come.key, 1), savedAt: at('06:40') };
  expect(verdicts(await send(day.technician, [come, newer]))).toEqual(['applied', 'applied']);
  expect(await send(day.technician, [older])).toMatchObject([{ verdict: 'conflict', other: { count: 5, by: 'The technician' } }]);
  expect(await rows('select recorded_at from zone_note where visit_id = $1', come.key)).toEqual([{ recorded_at: new Date(at('06:40')) }]);
  const over = (count: number) => ({ over: { count, word: null, repaired: false } });
  expect(
    verdicts(await send(day.lead, [note(come.key, 2, over(1)), note(come.key, 3, over(1)), note(come.key, 4, { over: null })])),
  ).toEqual(['applied', 'conflict', 'conflict']);
  const end = (doneNote: string, closedAt: string, more: object = {}) =>
    said('close-visit', { visitId: come.key, closedAt: at(closedAt), doneNote, leftNote: null, workedMinutes: 40, materials: [], ...more });
  const known = { over: { closedAt: at('15:40'), doneNote: 'Mine', leftNote: null, workedMinutes: 40, materials: [] } };
  expect(verdicts(await send(day.technician, [end('Mine', '15:40'), end('Old', '15:20'), end('Mine', '15:40')]))).toEqual([
    'applied',
    'conflict',
    'applied',
  ]);
  expect(verdicts(await send(day.lead, [end('Known', '15:41', known), end('Not known', '15:42', known)]))).toEqual(['applied', 'conflict']);
});

it('says whose phone and when, also where one person said two things on two phones', async () => {
  const { order, propertyId, note } = await aStop();
  const [first, second] = [
    { id: '0190a000-0000-7000-8000-00000000a1b2', name: 'Android 14 · A1B2' },
    { id: '0190a000-0000-7000-8000-00000000c3d4', name: null },
  ];
  const meter = await aMeter(product.database, { id: propertyId, organization_id: day.organizationId } as never);
  const at = (time: string) => ({ savedAt: `2026-07-06T${time}:00.000Z` });
  const come = arrival(order.stopId);
  const end = (doneNote: string, closedAt: string) =>
    said('close-visit', { visitId: come.key, closedAt: `2026-07-06T${closedAt}:00Z`, doneNote, leftNote: null }, at('06:50'));
  const read = (register: number) => said('reading', { meterId: meter.id, readAt: '2026-07-06T06:30:00Z', register, note: null });
  const done = (what: string) => said('end-order', { workOrderId: order.id, version: order.version, done: true, note: what }, at('06:45'));
  const said1 = [come, { ...note(come.key, 5), ...at('06:44') }, { ...read(100), ...at('06:35') }, end('Mine', '15:40'), done('Heads')];
  expect(verdicts(await send(day.lead, said1, first))).toEqual(said1.map(() => 'applied'));
  const said2 = [{ ...note(come.key, 1), ...at('06:40') }, { ...read(90), ...at('06:41') }, end('Old', '15:20'), done('Wire')];
  const told = await send(day.lead, said2, second);
  const there = { by: 'The crewLead', isSelf: true, phone: 'Android 14 · A1B2' };
  expect(told.map(({ verdict, other }) => ({ verdict, other }))).toMatchObject(
    ['06:44', '06:35', '06:50', '06:45'].map((time) => ({ verdict: 'conflict', other: { ...there, ...at(time) } })),
  );
  const { data } = await day.office.send('{ openOperations { key phone } }');
  const mine = new Set(said2.map(({ key }) => key));
  // A phone that says no name is known by the end of its id.
  expect(data.openOperations.filter(({ key }: { key: string }) => mine.has(key)).map(({ phone }: { phone: string }) => phone)).toEqual(
    said2.map(() => 'C3D4'),
  );
  // The last word stands, and its phone is told; who says it is another now.
  expect(await send(day.technician, [{ ...note(come.key, 9), ...at('06:55') }])).toMatchObject([
    { verdict: 'conflict', other: { count: 1, by: 'The crewLead', isSelf: false, phone: 'C3D4', ...at('06:40') } },
  ]);
});

it('refuses times that no clock is wrong by, and more of a thing than anybody counts', async () => {
  const { order, zone, note } = await aStop();
  const far = '2090-07-06T15:00:00Z';
  const come = arrival(order.stopId);
  const zoneTest = { visitId: come.key, zoneId: zone.id, testedAt: far, minutes: 10, catchesMl: [20, 20, 20], mouthM2: 0.01 };
  const told = await send(day.technician, [
    arrival(order.stopId, far),
    come,
    said('catch-test', zoneTest),
    said('photo', { visitId: come.key, kind: 'other', takenAt: far }),
    said('close-visit', { visitId: come.key, closedAt: far, doneNote: null, leftNote: null }),
    note(come.key, 1_000_000_000),
    note(come.key, 1.5),
  ]);
  expect(verdicts(told)).toEqual(['refused', 'applied', ...Array(5).fill('refused')]);
  for (const { verdict, problem } of told) if (verdict === 'refused') expect(problem!.code).toBe('VALUE_REFUSED');
});

it('takes photos of what is on the visited property alone, and planned settings only of those who give out work', async () => {
  const [here, there] = [await aStop(), await aStop()];
  const [mine, theirs] = [await day.finding(here.propertyId), await day.finding(there.propertyId)];
  const come = arrival(here.order.stopId);
  await send(day.technician, [come]);
  const announce = (more: object) =>
    day.technician.send('mutation($input: PhotoInput!) { announcePhoto(input: $input) { findingId workOrderId } }', {
      input: { id: randomUUID(), visitId: come.key, kind: 'after', takenAt: '2026-07-06T15:20:00Z', ...more },
    });
  expect(codeOf(await announce({ findingId: theirs.id }))).toBe('VALUE_REFUSED');
  expect(codeOf(await announce({ workOrderId: there.order.id }))).toBe('VALUE_REFUSED');
  expect(codeOf(await announce({ workOrderId: 'none' }))).toBe('VALUE_REFUSED');
  expect((await announce({ findingId: mine.id, workOrderId: here.order.id })).data.announcePhoto).toEqual({
    findingId: mine.id,
    workOrderId: here.order.id,
  });
  const controller = await aController(product.database, { id: here.propertyId, organization_id: day.organizationId } as never);
  const plan = (record: string) =>
    said('settings', { controllerId: controller.id, effectiveAt: '2026-07-06T15:10:00Z', record, state: 'off', programs: [] });
  expect(await send(day.technician, [plan('planned'), plan('found')])).toMatchObject([
    { verdict: 'refused', problem: { code: 'NOT_ALLOWED' } },
    { verdict: 'applied' },
  ]);
});

it('tells a crew what was found and not what it costs', async () => {
  const { propertyId } = await aStop();
  await day.finding(propertyId, { money: 120 });
  const money = async (who = day.office) =>
    (await who.send('query($id: ID!) { property(id: $id) { findings { kind money } } }', { id: propertyId })).data.property.findings;
  expect(await money()).toEqual([{ kind: 'unexplained use', money: 120 }]);
  expect(await money(day.lead)).toEqual([{ kind: 'unexplained use', money: null }]);
});

it('overwrites no other person’s phone, and takes a lost one off the list', async () => {
  const id = randomUUID();
  const list = '{ devices { id person waiting } }';
  const mine = async () =>
    (await day.office.send(list)).data.devices.filter(({ waiting }: { waiting: number }) => [31, 32, 33].includes(waiting));
  await send(day.technician, [], { id, waiting: 31 });
  await send(day.lead, [], { id, waiting: 32 });
  await send(day.lead, [], { id, waiting: 33 });
  expect(await mine()).toMatchObject([
    { person: 'The crewLead', waiting: 33 },
    { id, person: 'The technician', waiting: 31 },
  ]);
  const forget = (who = day.office) => who.send('mutation($id: ID!) { forgetDevice(id: $id) { id } }', { id });
  expect(codeOf(await forget(day.lead))).toBe('NOT_ALLOWED');
  await forget();
  expect(await mine()).toMatchObject([{ waiting: 33 }]);
  expect(codeOf(await forget())).toBe('NOT_FOUND');
  await send(day.technician, [], { id, waiting: 31 });
  expect(await mine()).toHaveLength(2);
});
