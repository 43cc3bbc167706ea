import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, expect, it } from 'vitest';
import { PauseChanged } from '../../../apps/api/src/features/settings/settings-recorded.event.js';
import { Events } from '../../../apps/api/src/platform/records/events.js';
import { type Built, aController, aCrew, aProperty, aStop, inCrew } from '../../support/builders.js';
import { type Somebody, type TestApp, startApp } from '../../support/test-app.js';

let product: TestApp;
let technician: Somebody;
let controller: Built;
let told: string[];

const FROM = '2026-07-06T15:00:00.000Z';
const UNTIL = '2026-07-08T15:00:00.000Z';
const pause = (who: Somebody, from = FROM, until: string | null = null, controllerId = controller.id) =>
  who.send(
    'mutation($controllerId: ID!, $from: DateTime!, $until: DateTime) { pauseController(controllerId: $controllerId, from: $from, until: $until) { id controllerId pausedFrom pausedUntil } }',
    { controllerId, from, until },
  );
const end = (who: Somebody, id: string, until = UNTIL) =>
  who.send('mutation($id: ID!, $until: DateTime!) { endRainPause(id: $id, until: $until) { id pausedUntil } }', { id, until });

beforeAll(async () => {
  product = await startApp();
  technician = await product.somebody(await product.organization(), 'technician');
  product.app.get(Events).on(PauseChanged, async (_, { controllerId }) => void told.push(controllerId));
});
beforeEach(async () => {
  told = [];
  const property = await aProperty(product.database, technician.organizationId);
  controller = await aController(product.database, property);
  const crew = await aCrew(product.database, technician.organizationId);
  await inCrew(product.database, crew, technician.memberId);
  await aStop(product.database, crew, property);
});
afterAll(() => product.close());

it('pauses a controller once, however often it is sent, and ends the pause', async () => {
  const answers = await Promise.all(Array.from({ length: 32 }, () => pause(technician)));
  const [first] = answers.map((answer) => answer.data.pauseController);
  expect(first).toEqual({ id: expect.any(String), controllerId: controller.id, pausedFrom: FROM, pausedUntil: null });
  expect(new Set(answers.map((answer) => answer.data.pauseController.id)).size).toBe(1);
  expect(told).toEqual([controller.id]);
  for (let delivery = 1; delivery <= 5; delivery += 1)
    expect((await end(technician, first.id)).data.endRainPause).toEqual({ id: first.id, pausedUntil: UNTIL });
  expect(told).toEqual([controller.id, controller.id]);
});

it('refuses an end before the beginning, and another end for a pause that is kept', async () => {
  expect((await pause(technician, UNTIL, FROM)).errors[0]).toMatchObject({
    message: `until: found "${FROM}", expected a time after ${UNTIL}.`,
  });
  const { id } = (await pause(technician)).data.pauseController;
  expect((await pause(technician, FROM, UNTIL)).errors[0]).toMatchObject({
    extensions: { code: 'VALUE_REFUSED', details: { field: 'until', found: UNTIL } },
  });
  expect((await end(technician, id, '2026-07-01T00:00:00Z')).errors[0]).toMatchObject({
    extensions: { code: 'VALUE_REFUSED', details: { field: 'until' } },
  });
});

it('is closed to another crew and to other organizations', async () => {
  const { id } = (await pause(technician)).data.pauseController;
  const others = [
    await product.somebody(technician.organizationId, 'technician'),
    await product.somebody(await product.organization(), 'owner'),
  ];
  for (const other of others) {
    expect((await pause(other)).errors[0]!.extensions).toMatchObject({ code: 'NOT_FOUND', details: { thing: 'controller' } });
    expect((await end(other, id)).errors[0]!.extensions).toEqual({ code: 'NOT_FOUND', details: { thing: 'rain pause', id } });
  }
  expect((await end(technician, randomUUID())).errors[0]!.extensions.code).toBe('NOT_FOUND');
});
