import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { inTransaction } from '../../../apps/api/src/platform/database/organization-transaction.js';
import { organizationActor } from '../../../apps/api/src/platform/database/actor.js';
import { type UsageRow, mergeUsage } from '../../../apps/api/src/features/metering/usage/merge-usage.service.js';
import { type Built, aController, aMeter, aProperty, aZone, someSettings } from '../../support/builders.js';
import { type Somebody, type TestApp, startApp } from '../../support/test-app.js';

let product: TestApp;
let owner: Somebody;

beforeAll(async () => {
  product = await startApp();
  owner = await product.somebody(await product.organization(), 'owner');
});
afterAll(() => product.close());

const MINUTE = 60_000;
/** NIST SP 811 (2008), Appendix B.8: 1 gal = 3.785 411 784 L. */
const LITRES_PER_GALLON = 3.785411784;

const merge = (rows: readonly UsageRow[]) =>
  inTransaction(product.source, organizationActor(owner.organizationId, 'import'), (tx) => mergeUsage(tx, rows));
const aMeterIn = async (time_zone: string): Promise<Built> =>
  aMeter(product.database, await aProperty(product.database, owner.organizationId, { time_zone }));

/** A feed without holes from one instant to another, a gallon an interval unless said otherwise. */
function feed(
  meter: Built,
  [from, until]: readonly [string, string],
  minutes: number,
  volume: (at: number) => number = () => 1,
): UsageRow[] {
  const rows: UsageRow[] = [];
  for (let at = Date.parse(from); at < Date.parse(until); at += minutes * MINUTE)
    rows.push({ meterId: meter.id, start: new Date(at), end: new Date(at + minutes * MINUTE), volume: volume(rows.length), unit: 'gal' });
  return rows;
}
const daysOf = async (meter: Built, from: string, until = from) =>
  (
    await owner.send(
      'query($id: ID!, $from: Date!, $until: Date!) { property(id: $id) { meters { usageDays(from: $from, until: $until) { day dayStart startSeconds lengthSeconds litres totalLitres leastLPerMin } } } }',
      { id: meter['property_id'], from, until },
    )
  ).data.property.meters[0].usageDays;

it('keeps an hourly feed by local day: 23 hours when clocks spring forward, 25 when they fall back', async () => {
  // US clocks change on the second Sunday of March and the first of November: 15 U.S.C. § 260a.
  const meter = await aMeterIn('America/Los_Angeles');
  expect(await merge(feed(meter, ['2026-03-07T08:00:00Z', '2026-03-10T07:00:00Z'], 60))).toEqual({ created: 71, changed: 0, same: 0 });
  expect(await merge(feed(meter, ['2026-10-31T07:00:00Z', '2026-11-03T08:00:00Z'], 60))).toEqual({ created: 73, changed: 0, same: 0 });
  const spring = await daysOf(meter, '2026-03-07', '2026-03-09');
  expect(spring.map((day: { day: string; dayStart: string; litres: number[] }) => [day.day, day.dayStart, day.litres.length])).toEqual([
    ['2026-03-07', '2026-03-07T08:00:00.000Z', 24],
    ['2026-03-08', '2026-03-08T08:00:00.000Z', 23],
    ['2026-03-09', '2026-03-09T07:00:00.000Z', 24],
  ]);
  const [, long] = await daysOf(meter, '2026-10-31', '2026-11-02');
  expect(long).toMatchObject({
    day: '2026-11-01',
    dayStart: '2026-11-01T07:00:00.000Z',
    totalLitres: expect.closeTo(25 * LITRES_PER_GALLON, 9),
  });
  expect(long.startSeconds).toEqual(Array.from({ length: 25 }, (_, hour) => 3600 * hour));
  expect(long.leastLPerMin).toBeCloseTo(LITRES_PER_GALLON / 60, 12);
});

it('keeps the last hour of a day that begins when the clocks skip midnight', async () => {
  // Santiago's clocks go from 23:59:59 to 01:00 on the first Sunday after 2 September (IANA time zone database, southamerica).
  const meter = await aMeterIn('America/Santiago');
  await merge(feed(meter, ['2026-09-05T04:00:00Z', '2026-09-07T03:00:00Z'], 60));
  const days = await daysOf(meter, '2026-09-05', '2026-09-06');
  expect(days.map((day: { dayStart: string; litres: number[] }) => [day.dayStart, day.litres.length])).toEqual([
    ['2026-09-05T04:00:00.000Z', 24],
    ['2026-09-06T04:00:00.000Z', 23],
  ]);
});

it('takes a 15-minute feed, and knows the least flow only where no hole can hide it', async () => {
  const meter = await aMeterIn('America/Phoenix');
  const whole = feed(meter, ['2026-06-01T07:00:00Z', '2026-06-02T07:00:00Z'], 15, (at) => (at === 12 ? 0.25 : 3));
  const holed = feed(meter, ['2026-06-02T07:00:00Z', '2026-06-03T07:00:00Z'], 15).filter((_, at) => at !== 40);
  expect(await merge([...whole, ...holed])).toEqual({ created: 191, changed: 0, same: 0 });
  const [first, second] = await daysOf(meter, '2026-06-01', '2026-06-02');
  expect(first.litres).toHaveLength(96);
  expect(first.leastLPerMin).toBeCloseTo((0.25 * LITRES_PER_GALLON) / 15, 12);
  expect(second).toMatchObject({ leastLPerMin: null, totalLitres: expect.closeTo(95 * LITRES_PER_GALLON, 9) });
});

it('changes nothing when the same comes again, in any order and piece by piece', async () => {
  const meter = await aMeterIn('America/Denver');
  const rows = feed(meter, ['2026-06-01T06:00:00Z', '2026-06-04T06:00:00Z'], 60, (at) => at / 7);
  const shuffled = [...rows].sort((a, b) => ((a.start.getTime() * 7919) % 104_729) - ((b.start.getTime() * 7919) % 104_729));
  for (let at = 0; at < shuffled.length; at += 10) expect(await merge(shuffled.slice(at, at + 10))).toMatchObject({ changed: 0, same: 0 });
  const before = await daysOf(meter, '2026-06-01', '2026-06-03');
  expect(before.map((day: { litres: number[] }) => day.litres.length)).toEqual([24, 24, 24]);
  expect(await merge(rows)).toEqual({ created: 0, changed: 0, same: 72 });
  expect(await daysOf(meter, '2026-06-01', '2026-06-03')).toEqual(before);
});

it('loses nothing when pieces of one day come side by side', async () => {
  const meter = await aMeterIn('America/Denver');
  const rows = feed(meter, ['2026-06-01T06:00:00Z', '2026-06-02T06:00:00Z'], 60);
  await Promise.all(rows.map((row) => merge([row])));
  expect((await daysOf(meter, '2026-06-01'))[0].litres).toHaveLength(24);
});

it('lets what comes in stand instead of what it overlaps', async () => {
  const meter = await aMeterIn('America/Denver');
  const hours = feed(meter, ['2026-06-01T06:00:00Z', '2026-06-01T09:00:00Z'], 60, () => 8);
  await merge(hours);
  expect(await merge([{ ...hours[1]!, volume: 9 }])).toEqual({ created: 0, changed: 1, same: 0 });
  expect(await merge(feed(meter, ['2026-06-01T06:00:00Z', '2026-06-01T07:00:00Z'], 15, () => 2.5))).toEqual({
    created: 3,
    changed: 1,
    same: 0,
  });
  const [day] = await daysOf(meter, '2026-06-01');
  expect(day.startSeconds).toEqual([0, 900, 1800, 2700, 3600, 7200]);
  expect(day.totalLitres).toBeCloseTo(27 * LITRES_PER_GALLON, 9);
  await merge([hours[0]!]);
  expect((await daysOf(meter, '2026-06-01'))[0].startSeconds).toEqual([0, 3600, 7200]);
});

it('keeps volumes as typed, and converts what comes in another unit than its day has', async () => {
  const meter = await aMeterIn('America/Denver');
  const [first, second] = feed(meter, ['2026-06-01T06:00:00Z', '2026-06-01T08:00:00Z'], 60, () => 0.1);
  await merge([first!, { ...second!, volume: 10, unit: 'L' }]);
  expect(await product.database.admin('select unit, volumes from usage_day where meter_id = $1', [meter.id])).toEqual([
    { unit: 'gal', volumes: [0.1, expect.closeTo(10 / LITRES_PER_GALLON, 12)] },
  ]);
  expect(await merge([first!, { ...second!, volume: 10, unit: 'L' }])).toEqual({ created: 0, changed: 0, same: 2 });
});

it('refuses a meter that is not there and an end before its start, and keeps nothing of the rest', async () => {
  const meter = await aMeterIn('America/Denver');
  const [row] = feed(meter, ['2026-06-01T06:00:00Z', '2026-06-01T07:00:00Z'], 60);
  await expect(merge([row!, { ...row!, meterId: randomUUID() }])).rejects.toMatchObject({ code: 'NOT_FOUND' });
  await expect(merge([row!, { ...row!, end: new Date(row!.start.getTime() - MINUTE) }])).rejects.toMatchObject({ code: 'VALUE_REFUSED' });
  expect(await daysOf(meter, '2026-06-01')).toEqual([]);
});

it('refuses a stretch of more days than a page can show', async () => {
  const meter = await aMeterIn('America/Denver');
  const answer = await owner.send(
    'query($id: ID!) { property(id: $id) { meters { usageDays(from: "2020-01-01", until: "2026-01-01") { day } } } }',
    { id: meter['property_id'] },
  );
  expect(answer.errors[0]!.extensions).toMatchObject({ code: 'VALUE_REFUSED', details: { field: 'until' } });
});

it('offers what a controller seems to be set to by its usage alone, until somebody has read it', async () => {
  const organizationId = await product.organization();
  await product.database.admin(`update organization set stands_still_on = '2026-07-10' where id = $1`, [organizationId]);
  const office = await product.somebody(organizationId, 'office');
  const property = await aProperty(product.database, organizationId, { time_zone: 'America/Phoenix' });
  const meter = await aMeter(product.database, property);
  const controller = await aController(product.database, property);
  await aZone(product.database, property, { controller_id: controller.id, station: 1 });
  // Quarters of an hour of three weeks; water for an hour from 3:00 on Mondays, Wednesdays and Fridays. 15 June 2026 is a Monday.
  const WATERED = new Set([0, 2, 4]);
  const rows = feed(meter, ['2026-06-15T07:00:00Z', '2026-07-08T07:00:00Z'], 15, (at) =>
    WATERED.has(Math.floor(at / 96) % 7) && at % 96 >= 12 && at % 96 < 16 ? 149 + (at % 3) : 0,
  );
  await inTransaction(product.source, organizationActor(organizationId, 'import'), (tx) => mergeUsage(tx, rows));
  const ask = async () =>
    (
      await office.send(
        'query($id: ID!) { property(id: $id) { controllers { inferredSettings { meterId through programs { name days starts minutes confidence } } } } }',
        { id: property.id },
      )
    ).data.property.controllers[0].inferredSettings;
  expect(await ask()).toEqual({
    meterId: meter.id,
    through: '2026-07-07',
    programs: [{ name: 'A', days: 'Mon Wed Fri', starts: ['03:00'], minutes: [60], confidence: 1 }],
  });
  await someSettings(product.database, controller, { effective_at: '2026-07-01T12:00:00Z', record: 'found' });
  expect(await ask()).toBeNull();
});
