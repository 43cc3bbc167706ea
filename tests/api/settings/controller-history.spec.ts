import { afterAll, beforeAll, expect, it } from 'vitest';
import { programFromKept } from '../../../apps/api/src/features/settings/program-from-kept.service.js';
import { mergeSettings } from '../../../apps/api/src/features/settings/facts/merge-settings.service.js';
import { mergePauses } from '../../../apps/api/src/features/settings/pauses/merge-pauses.service.js';
import { inTransaction } from '../../../apps/api/src/platform/database/organization-transaction.js';
import { organizationActor } from '../../../apps/api/src/platform/database/actor.js';
import { type Built, aController, aProperty, someSettings } from '../../support/builders.js';
import { type Somebody, type TestApp, startApp } from '../../support/test-app.js';

let product: TestApp;
let owner: Somebody;

beforeAll(async () => {
  product = await startApp();
  const organization = await product.organization();
  // The organization's world stands still on a day; its clock's time of day goes on.
  await product.database.admin(`update organization set stands_still_on = '2026-07-10' where id = $1`, [organization]);
  owner = await product.somebody(organization, 'owner');
});
afterAll(() => product.close());

const aPlace = async (columns = {}): Promise<Built> =>
  aController(product.database, await aProperty(product.database, owner.organizationId, columns));
const within = <T>(work: Parameters<typeof inTransaction<T>>[2]) =>
  inTransaction(product.source, organizationActor(owner.organizationId, 'import'), work);
const ask = async (controller: Built, fields: string) =>
  (await owner.send(`query($id: ID!) { property(id: $id) { controllers { ${fields} } } }`, { id: controller['property_id'] })).data.property
    .controllers[0];

it('shows settings newest first, and of one time the one left above the one found', async () => {
  const controller = await aPlace();
  for (const [effective_at, record] of [
    ['2026-06-01T12:00:00Z', 'found'],
    ['2026-07-01T12:00:00Z', 'found'],
    ['2026-07-01T12:00:00Z', 'left'],
    ['2026-08-01T12:00:00Z', 'planned'],
  ])
    await someSettings(product.database, controller, { effective_at, record });
  const { settings } = await ask(controller, 'settings(first: 3) { record localTime }');
  expect(settings).toEqual([
    { record: 'planned', localTime: '2026-08-01T05:00' },
    { record: 'left', localTime: '2026-07-01T05:00' },
    { record: 'found', localTime: '2026-07-01T05:00' },
  ]);
  const answer = await owner.send('query($id: ID!) { property(id: $id) { controllers { settings(first: 501) { id } } } }', {
    id: controller['property_id'],
  });
  expect(answer.errors[0]!.extensions).toMatchObject({ code: 'VALUE_REFUSED', details: { field: 'first' } });
});

it('knows what stands now and what is planned: no fact of a later day, no plan older than what stands', async () => {
  const controller = await aPlace();
  const BOTH = 'presentSettings { record effectiveAt } plannedSettings { effectiveAt }';
  expect(await ask(controller, BOTH)).toEqual({ presentSettings: null, plannedSettings: null });
  const put = (day: string, record: string) => someSettings(product.database, controller, { effective_at: `${day}T12:00:00Z`, record });
  const at = (day: string) => `${day}T12:00:00.000Z`;
  await put('2026-07-05', 'planned');
  expect(await ask(controller, BOTH)).toEqual({ presentSettings: null, plannedSettings: { effectiveAt: at('2026-07-05') } });
  await put('2026-07-01', 'found');
  await put('2026-07-12', 'left');
  expect(await ask(controller, BOTH)).toEqual({
    presentSettings: { record: 'found', effectiveAt: at('2026-07-01') },
    plannedSettings: { effectiveAt: at('2026-07-05') },
  });
  await put('2026-07-07', 'left');
  expect(await ask(controller, BOTH)).toEqual({
    presentSettings: { record: 'left', effectiveAt: at('2026-07-07') },
    plannedSettings: null,
  });
  await put('2026-08-01', 'planned');
  expect(await ask(controller, BOTH)).toMatchObject({ plannedSettings: { effectiveAt: at('2026-08-01') } });
  // What is given out today is entered today, whatever is planned for a day to come.
  await put('2026-07-08', 'planned');
  expect(await ask(controller, BOTH)).toMatchObject({ plannedSettings: { effectiveAt: at('2026-07-08') } });
});

it('tells the wall time of the property, the repeated hour too', async () => {
  const controller = await aPlace({ time_zone: 'America/New_York' });
  // US clocks fall back on the first Sunday of November (15 U.S.C. § 260a): 01:30 is there twice.
  for (const effective_at of ['2026-06-30T22:00:00Z', '2025-11-02T05:30:00Z', '2025-11-02T06:30:00Z'])
    await someSettings(product.database, controller, { effective_at });
  const { settings } = await ask(controller, 'settings { localTime }');
  expect(settings.map(({ localTime }: { localTime: string }) => localTime)).toEqual([
    '2026-06-30T18:00',
    '2025-11-02T01:30',
    '2025-11-02T01:30',
  ]);
});

const A = {
  name: 'A',
  days: { kind: 'weekdays', weekdays: ['Mon', 'Thu'] },
  starts: [300, 1350],
  adjustPercent: 85,
  stations: [{ station: 3, minutes: 12.5, cycles: 2, soakMinutes: 30 }],
} as const;
const B = { ...A, name: 'B', days: { kind: 'every', everyDays: 3, from: '2026-06-01' } } as const;

it('merges settings by controller, time and record, and gives back the programs that came in', async () => {
  const controller = await aPlace();
  const fact = {
    controllerId: controller.id,
    effectiveAt: new Date('2026-06-01T12:00:00Z'),
    record: 'found' as const,
    state: 'on' as const,
    programs: [A, B],
    typed: { lines: [{ minutes: '12.50' }] },
  };
  const off = { ...fact, effectiveAt: new Date('2026-06-10T12:00:00Z'), state: 'off' as const, programs: [], typed: { lines: [{}] } };
  expect(await within((tx) => mergeSettings(tx, [fact, off]))).toEqual({ created: 2, changed: 0, same: 0 });
  expect(await within((tx) => mergeSettings(tx, [fact, off]))).toEqual({ created: 0, changed: 0, same: 2 });
  expect(await within((tx) => mergeSettings(tx, [{ ...fact, programs: [A] }, off]))).toEqual({ created: 0, changed: 1, same: 1 });
  await within((tx) => mergeSettings(tx, [fact]));
  const [kept] = await product.database.admin<{ programs: Parameters<typeof programFromKept>[0][] }>(
    'select programs from settings where controller_id = $1 order by effective_at',
    [controller.id],
  );
  expect(kept!.programs.map(programFromKept)).toEqual([A, B]);
  expect(kept!.programs[1]).toMatchObject({ days: 'every 3 from 2026-06-01', starts: ['05:00', '22:30'] });
});

it('merges rain pauses by controller and beginning', async () => {
  const controller = await aPlace();
  const pause = { controllerId: controller.id, pausedFrom: new Date('2026-06-01T12:00:00Z'), pausedUntil: null, typed: {} };
  const ended = { ...pause, pausedUntil: new Date('2026-06-02T12:00:00Z') };
  expect(await within((tx) => mergePauses(tx, [pause]))).toEqual({ created: 1, changed: 0, same: 0 });
  expect(await within((tx) => mergePauses(tx, [pause]))).toEqual({ created: 0, changed: 0, same: 1 });
  expect(await within((tx) => mergePauses(tx, [ended]))).toEqual({ created: 0, changed: 1, same: 0 });
  expect((await ask(controller, 'rainPauses { pausedUntil }')).rainPauses).toEqual([{ pausedUntil: '2026-06-02T12:00:00.000Z' }]);
});

it('asks as many statements for 20 controllers as for one', async () => {
  const statementsFor = async (controllers: number): Promise<number> => {
    const place = await aProperty(product.database, owner.organizationId);
    for (let count = 0; count < controllers; count += 1) await someSettings(product.database, await aController(product.database, place));
    let statements = 0;
    const { logger } = product.source;
    const before = logger.logQuery;
    logger.logQuery = () => void (statements += 1);
    const answer = await owner.send(
      'query($id: ID!) { property(id: $id) { controllers { settings { localTime recordedBy } presentSettings { localTime } plannedSettings { id } rainPauses { id } } } }',
      { id: place.id },
    );
    logger.logQuery = before;
    expect(answer.data.property.controllers).toHaveLength(controllers);
    return statements;
  };
  const forOne = await statementsFor(1);
  expect(forOne).toBeGreaterThan(5);
  expect(await statementsFor(20)).toBe(forOne);
});
