import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { inTransaction } from '../../../apps/api/src/platform/database/organization-transaction.js';
import { organizationActor } from '../../../apps/api/src/platform/database/actor.js';
import { mergeBills } from '../../../apps/api/src/features/metering/bills/merge-bills.service.js';
import { mergeReadings } from '../../../apps/api/src/features/metering/readings/merge-readings.service.js';
import { type Built, aMeter, aProperty, aReading } from '../../support/builders.js';
import { type Somebody, type TestApp, startApp } from '../../support/test-app.js';

let product: TestApp;
let owner: Somebody;
let property: Built;

beforeAll(async () => {
  product = await startApp();
  owner = await product.somebody(await product.organization(), 'owner');
  property = await aProperty(product.database, owner.organizationId);
});
afterAll(() => product.close());

const within = <T>(work: Parameters<typeof inTransaction<T>>[2]) =>
  inTransaction(product.source, organizationActor(owner.organizationId, 'import'), work);
/** NIST SP 811 (2008), Appendix B.8: 1 gal = 3.785 411 784 L. */
const LITRES_PER_KGAL = 3785.411784;

const READINGS = `query($id: ID!, $first: Int) { property(id: $id) { meters { name readings(first: $first) { register judgement litresSinceLast replacedById } } } }`;
const readingsOf = async (id: string, first = 24) => (await owner.send(READINGS, { id, first })).data.property.meters[0].readings;

it('shows readings newest first, each beside the last that was right, the replaced one below what replaced it', async () => {
  const place = await aProperty(product.database, owner.organizationId);
  const meter = await aMeter(product.database, place, { unit: 'kgal' });
  const at = (day: string, register: number, more = {}) =>
    aReading(product.database, meter, { read_at: `${day}T15:00:00Z`, register, ...more });
  await at('2026-05-01', 100);
  await at('2026-05-08', 110);
  await at('2026-05-15', 90);
  const right = await at('2026-05-22', 130);
  await at('2026-05-22', 310, { replaced_by_id: right.id });
  expect(await readingsOf(place.id)).toEqual([
    { register: 130, judgement: 'ok', litresSinceLast: expect.closeTo(20 * LITRES_PER_KGAL, 6), replacedById: null },
    { register: 310, judgement: 'ok', litresSinceLast: expect.closeTo(200 * LITRES_PER_KGAL, 6), replacedById: right.id },
    { register: 90, judgement: 'lower than last', litresSinceLast: null, replacedById: null },
    { register: 110, judgement: 'ok', litresSinceLast: expect.closeTo(10 * LITRES_PER_KGAL, 6), replacedById: null },
    { register: 100, judgement: 'first', litresSinceLast: null, replacedById: null },
  ]);
  expect(await readingsOf(place.id, 2)).toHaveLength(2);
  expect((await owner.send(READINGS, { id: place.id, first: 0 })).errors[0]!.extensions).toMatchObject({
    code: 'VALUE_REFUSED',
    details: { field: 'first' },
  });
});

it("counts the first reading from the register's beginning", async () => {
  const place = await aProperty(product.database, owner.organizationId);
  const meter = await aMeter(product.database, place, { unit: 'kgal', installed_on: '2026-04-01', first_register: 3 });
  await aReading(product.database, meter, { read_at: '2026-05-01T15:00:00Z', register: 10 });
  expect(await readingsOf(place.id)).toMatchObject([{ judgement: 'ok', litresSinceLast: expect.closeTo(7 * LITRES_PER_KGAL, 6) }]);
});

it('merges readings by meter and instant: the same changes nothing, another register corrects, another note is noted', async () => {
  const meter = await aMeter(product.database, property);
  const rows = [1, 2, 3].map((month) => ({
    meterId: meter.id,
    readAt: new Date(Date.UTC(2026, month, 1)),
    register: 100 * month,
    source: null,
    note: null,
    typed: { register: `${100 * month}` },
  }));
  expect(await within((tx) => mergeReadings(tx, rows))).toEqual({ created: 3, changed: 0, same: 0 });
  expect(await within((tx) => mergeReadings(tx, rows))).toEqual({ created: 0, changed: 0, same: 3 });
  const changed = [rows[0]!, { ...rows[1]!, register: 210 }, { ...rows[2]!, source: 'feed' as const, note: 'from the feed' }];
  expect(await within((tx) => mergeReadings(tx, changed))).toEqual({ created: 0, changed: 2, same: 1 });
  expect(await within((tx) => mergeReadings(tx, changed))).toEqual({ created: 0, changed: 0, same: 3 });
  const kept = await product.database.admin(
    'select register, source, note, replaced_by_id is not null as replaced from reading where meter_id = $1 order by read_at, replaced desc',
    [meter.id],
  );
  expect(kept).toEqual([
    { register: 100, source: 'crew', note: null, replaced: false },
    { register: 200, source: 'crew', note: null, replaced: true },
    { register: 210, source: 'crew', note: null, replaced: false },
    { register: 300, source: 'feed', note: 'from the feed', replaced: false },
  ]);
});

it('merges bills by meter and first day', async () => {
  const meter = await aMeter(product.database, property);
  const bill = {
    meterId: meter.id,
    startOn: '2026-05-01',
    endOn: '2026-06-01',
    volume: 40,
    unit: 'kgal' as const,
    amount: 212.5,
    typed: { volume: '40' },
  };
  const next = { ...bill, startOn: '2026-06-01', endOn: '2026-07-01', amount: null };
  expect(await within((tx) => mergeBills(tx, [bill, next]))).toEqual({ created: 2, changed: 0, same: 0 });
  expect(await within((tx) => mergeBills(tx, [bill, next]))).toEqual({ created: 0, changed: 0, same: 2 });
  expect(await within((tx) => mergeBills(tx, [{ ...bill, volume: 41 }, next]))).toEqual({ created: 0, changed: 1, same: 1 });
  const answer = await owner.send(
    'query($id: ID!) { property(id: $id) { meters { id bills { startOn endOn volume unit litres amount } } } }',
    { id: property.id },
  );
  expect(answer.data.property.meters.find(({ id }: { id: string }) => id === meter.id).bills).toEqual([
    { startOn: '2026-06-01', endOn: '2026-07-01', volume: 40, unit: 'kgal', litres: expect.closeTo(40 * LITRES_PER_KGAL, 6), amount: null },
    {
      startOn: '2026-05-01',
      endOn: '2026-06-01',
      volume: 41,
      unit: 'kgal',
      litres: expect.closeTo(41 * LITRES_PER_KGAL, 6),
      amount: 212.5,
    },
  ]);
  await expect(within((tx) => mergeBills(tx, [{ ...bill, meterId: randomUUID() }]))).rejects.toMatchObject({
    driverError: { constraint: 'bill_meter' },
  });
});

it('asks as many statements for 20 meters as for one', async () => {
  const statementsFor = async (meters: number): Promise<number> => {
    const place = await aProperty(product.database, owner.organizationId);
    for (let count = 0; count < meters; count += 1) {
      const meter = await aMeter(product.database, place);
      await aReading(product.database, meter, { read_at: '2026-05-01T15:00:00Z', register: 1 });
    }
    const counted = countStatements();
    const answer = await owner.send(
      'query($id: ID!) { property(id: $id) { meters { readings { register recordedBy } usageDays(from: "2026-05-01", until: "2026-05-31") { day } bills { startOn } } } }',
      { id: place.id },
    );
    expect(answer.data.property.meters).toHaveLength(meters);
    return counted();
  };
  const forOne = await statementsFor(1);
  expect(forOne).toBeGreaterThan(5);
  expect(await statementsFor(20)).toBe(forOne);
});

/** Counts the statements that the application sends. */
function countStatements(): () => number {
  let count = 0;
  const { logger } = product.source;
  const before = logger.logQuery;
  logger.logQuery = () => void (count += 1);
  return () => {
    logger.logQuery = before;
    return count;
  };
}
