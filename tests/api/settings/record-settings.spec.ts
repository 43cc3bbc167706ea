import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, expect, it } from 'vitest';
import { type Built, aController, aCrew, aProperty, aStop, inCrew } from '../../support/builders.js';
import { type Somebody, type TestApp, startApp } from '../../support/test-app.js';

let product: TestApp;
let office: Somebody;
let technician: Somebody;
let controller: Built;

const SHOWN =
  'id controllerId effectiveAt localTime record state recordedBy programs { name days starts adjustPercent stations { station minutes cycles soakMinutes } }';
const RECORD = `mutation($input: SettingsInput!) { recordSettings(input: $input) { __typename ... on Settings { ${SHOWN} } ... on SettingsConflict { kept { id state } } } }`;

const program = (content: Record<string, unknown> = {}) => ({
  name: 'A',
  days: 'Mon Wed Fri',
  starts: ['05:00', '22:30'],
  adjustPercent: 100,
  stations: [{ station: 1, minutes: 12 }],
  ...content,
});
const aRecord = (content: Record<string, unknown> = {}) => ({
  deviceRecordId: randomUUID(),
  controllerId: controller.id,
  effectiveAt: '2026-07-06T15:04:30.000Z',
  record: 'found',
  state: 'on',
  programs: [program()],
  ...content,
});
const record = async (who: Somebody, input: Record<string, unknown>) => {
  const answer = await who.send(RECORD, { input });
  return answer.data?.recordSettings ?? answer.errors[0];
};
const countOf = async (id: string) => (await product.database.admin('select id from settings where controller_id = $1', [id])).length;

beforeAll(async () => {
  product = await startApp();
  office = await product.somebody(await product.organization(), 'office');
  technician = await product.somebody(office.organizationId, 'technician');
});
beforeEach(async () => {
  const property = await aProperty(product.database, office.organizationId);
  controller = await aController(product.database, property, {
    name: 'A',
    stations: 12,
    programs: 3,
    starts_per_program: 4,
    max_minutes: 99,
  });
  const crew = await aCrew(product.database, office.organizationId);
  await inCrew(product.database, crew, technician.memberId);
  await aStop(product.database, crew, property);
});
afterAll(() => product.close());

it('keeps settings once, however often they are delivered, and shows the time on the property’s clock', async () => {
  const input = aRecord();
  const first = await record(technician, input);
  expect(first).toEqual({
    __typename: 'Settings',
    id: expect.any(String),
    controllerId: controller.id,
    effectiveAt: '2026-07-06T15:04:30.000Z',
    localTime: '2026-07-06T08:04',
    record: 'found',
    state: 'on',
    recordedBy: 'The technician',
    programs: [program({ stations: [{ station: 1, minutes: 12, cycles: null, soakMinutes: null }] })],
  });
  for (let delivery = 2; delivery <= 5; delivery += 1) expect(await record(technician, input)).toEqual(first);
  expect(await countOf(controller.id)).toBe(1);
});

it('makes one row of 32 equal submissions at once', async () => {
  const input = aRecord();
  const answers = await Promise.all(Array.from({ length: 32 }, () => record(technician, input)));
  expect(new Set(answers.map(({ __typename, id }) => `${__typename} ${id}`)).size).toBe(1);
  expect(await countOf(controller.id)).toBe(1);
});

it('shows what is kept when a name, or a controller’s time and record, comes again with another content', async () => {
  const input = aRecord();
  const { id } = await record(technician, input);
  const conflict = { __typename: 'SettingsConflict', kept: { id, state: 'on' } };
  expect(await record(technician, { ...input, programs: [program({ days: 'daily' })] })).toEqual(conflict);
  expect(await record(technician, { ...input, effectiveAt: '2026-07-06T15:05:00Z' })).toEqual(conflict);
  expect(await record(office, aRecord({ state: 'off', programs: [] }))).toEqual(conflict);
  // The same facts under another name are the same settings; as left they are others.
  expect(await record(office, aRecord())).toMatchObject({ __typename: 'Settings', id });
  expect(await record(technician, aRecord({ record: 'left' }))).toMatchObject({ __typename: 'Settings', record: 'left' });
  expect(await countOf(controller.id)).toBe(2);
});

it.each([
  ['daily', true],
  ['odd', true],
  ['even', true],
  ['Mon', true],
  ['Sun Sat', true],
  ['every 3 from 2026-06-01', true],
  ['every 0 from 2026-06-01', false],
  ['every 3 from 2026-02-30', false],
  ['every 3', false],
  ['Mon Mon', false],
  ['Monday', false],
  ['mon', false],
  ['', false],
])('takes the days of a program in the words of the import folder: %j is %s', async (days, right) => {
  const answer = await record(technician, aRecord({ programs: [program({ days })] }));
  if (right) expect(answer).toMatchObject({ __typename: 'Settings', programs: [{ days }] });
  else
    expect(answer).toMatchObject({
      message: `program A, days: found ${JSON.stringify(days)}, expected \`Mon Wed Fri\`, \`daily\`, \`odd\`, \`even\` or \`every 3 from 2026-06-01\`.`,
      extensions: { code: 'VALUE_REFUSED' },
    });
});

it.each([
  [
    'four programs in three',
    { programs: ['A', 'B', 'C', 'D'].map((name) => program({ name })) },
    'programs: found 4, expected at most 3, which controller A holds.',
  ],
  ['two programs of one name', { programs: [program(), program()] }, 'programs: found "A", expected a name for each program.'],
  [
    'five starts',
    { programs: [program({ starts: ['01:00', '02:00', '03:00', '04:00', '05:00'] })] },
    'program A, starts: found 5, expected at most 4, which a program of controller A holds.',
  ],
  [
    'one start twice',
    { programs: [program({ starts: ['01:00', '01:00'] })] },
    'program A, starts: found "01:00", expected each start once.',
  ],
  [
    'a start at 24:00',
    { programs: [program({ starts: ['24:00'] })] },
    'program A, starts: found "24:00", expected HH:MM from 00:00 to 23:59.',
  ],
  [
    'a start of one digit',
    { programs: [program({ starts: ['5:00'] })] },
    'program A, starts: found "5:00", expected HH:MM from 00:00 to 23:59.',
  ],
  [
    'station 13 of 12',
    { programs: [program({ stations: [{ station: 13, minutes: 5 }] })] },
    'program A, station: found 13, expected 1 to 12, which controller A has.',
  ],
  [
    'station 0',
    { programs: [program({ stations: [{ station: 0, minutes: 5 }] })] },
    'program A, station: found 0, expected 1 to 12, which controller A has.',
  ],
  [
    'a station twice',
    {
      programs: [
        program({
          stations: [
            { station: 1, minutes: 5 },
            { station: 1, minutes: 6 },
          ],
        }),
      ],
    },
    'program A, station: found 1, expected each station once in a program.',
  ],
  [
    '100 minutes of 99',
    { programs: [program({ stations: [{ station: 1, minutes: 100 }] })] },
    'program A, station 1, minutes: found 100, expected 0 to 99.',
  ],
  [
    'no cycles',
    { programs: [program({ stations: [{ station: 1, minutes: 9, cycles: 0 }] })] },
    'program A, station 1, cycles: found 0, expected 1 to 100.',
  ],
  [
    'a negative soak',
    { programs: [program({ stations: [{ station: 1, minutes: 9, soakMinutes: -1 }] })] },
    'program A, station 1, soak: found -1, expected 0 to 1440 minutes.',
  ],
  ['a negative percent', { programs: [program({ adjustPercent: -5 })] }, 'program A, percent: found -5, expected 0 to 1000.'],
  ['programs while off', { state: 'off' }, 'programs: found 1, expected none, for a controller in state off runs no program of its own.'],
  ['an unknown record', { record: 'seen' }, 'record: found "seen", expected found, left or planned.'],
  ['an unknown state', { state: 'broken' }, 'state: found "broken", expected on, off, weather or unknown.'],
  [
    'a fact from the future',
    { effectiveAt: '2126-01-01T00:00:00Z' },
    'effectiveAt: found "2126-01-01T00:00:00.000Z", expected a time that is not in the future.',
  ],
  ['a name that is no UUID', { deviceRecordId: '7' }, 'deviceRecordId: found "7", expected a UUID made by the device.'],
])('refuses %s with a sentence', async (_, content, message) => {
  expect(await record(technician, aRecord(content))).toMatchObject({ message, extensions: { code: 'VALUE_REFUSED' } });
  expect(await countOf(controller.id)).toBe(0);
});

it('takes one percent for all programs of a controller that has only one, and several where it has several', async () => {
  const programs = [program(), program({ name: 'B', adjustPercent: 80 })];
  expect(await record(technician, aRecord({ programs }))).toMatchObject({ __typename: 'Settings' });
  await product.database.admin(`update controller set adjust_scope = 'controller' where id = $1`, [controller.id]);
  const later = { effectiveAt: '2026-07-07T15:00:00Z' };
  expect(await record(technician, aRecord({ ...later, programs }))).toMatchObject({
    message: 'programs, percent: found "100 and 80", expected one percent, which controller A has for all its programs.',
  });
  // A percent that was not given is 100.
  expect(await record(technician, aRecord({ ...later, programs: [program(), program({ name: 'B', adjustPercent: null })] }))).toMatchObject(
    { __typename: 'Settings' },
  );
});

it('is closed to another crew, to clients and to other organizations: for them there is no such controller', async () => {
  const other = await product.somebody(office.organizationId, 'technician');
  const stranger = await product.somebody(await product.organization(), 'owner');
  const input = aRecord();
  for (const who of [other, stranger])
    expect(await record(who, input)).toMatchObject({
      extensions: { code: 'NOT_FOUND', details: { thing: 'controller', id: controller.id } },
    });
  await record(technician, input);
  expect(await record(other, input)).toMatchObject({ extensions: { code: 'NOT_FOUND' } });
  const [property] = await product.database.admin<{ client_id: string }>('select client_id from property where id = $1', [
    controller['property_id'],
  ]);
  expect(await record(await product.somebody(office.organizationId, 'client', property!.client_id), input)).toMatchObject({
    extensions: { code: 'NOT_ALLOWED' },
  });
});
