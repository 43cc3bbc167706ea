import { afterAll, beforeAll, expect, it } from 'vitest';
import { startApp, type TestApp } from '../../support/test-app.js';
import { countsOf, exportOf, importInto, inputsOf } from './exchange-kit.js';
import { world } from '../../support/world-of-rows.mjs';

let product: TestApp;
beforeAll(async () => {
  product = await startApp();
});
afterAll(() => product.close());

const HEAD = 'property,meter,start,end,volume,unit\n';
const place = {
  'properties.csv': 'property,client,time_zone\nOne,C,America/Los_Angeles\n',
  'meters.csv': 'meter,property,unit\nM,One,gal\n',
};
const two = (value: number): string => String(value).padStart(2, '0');

/** A day of a feed as the clock on the wall shows it: `skipped` hours never come, `repeated` ones come twice. */
function dayOfFeed(day: string, minutes: number, clock: { skipped?: number; repeated?: number }): string[] {
  const walls: string[] = [];
  for (let hour = 0; hour < 24; hour += 1) {
    if (hour === clock.skipped) continue;
    for (let time = hour === clock.repeated ? -1 : 0; time < 1; time += 1)
      for (let minute = 0; minute < 60; minute += minutes) walls.push(`${day}T${two(hour)}:${two(minute)}`);
  }
  const next = new Date(Date.parse(`${day}T00:00:00Z`) + 86_400_000).toISOString().slice(0, 10);
  return walls.map((start, at) => `One,M,${start},${walls[at + 1] ?? `${next}T00:00`},${at + 0.25},gal`);
}

it.each([
  [60, 23, 25],
  [15, 92, 100],
])('keeps a feed of %i minutes over both days on which the clocks are moved, however often it comes', async (minutes, spring, autumn) => {
  const organization = await product.organization();
  // 8 March and 1 November 2026: second Sunday of March, first of November (15 U.S.C. 260a).
  const lines = [...dayOfFeed('2026-03-08', minutes, { skipped: 2 }), ...dayOfFeed('2026-11-01', minutes, { repeated: 1 })];
  const files = { ...place, 'usage.csv': `${HEAD}${lines.join('\n')}\n` };
  const first = await importInto(product, organization, files);
  expect(countsOf(first)['usage.csv']).toBe(`${lines.length} 0 0 0`);
  const days = () =>
    product.database.admin<{ day: string; count: number; seconds: number; whole: boolean }>(
      `select day::text, cardinality(volumes) as count, (select sum(length)::integer from unnest(length_seconds) as length) as seconds, least_l_per_min is not null as whole from usage_day where organization_id = $1 order by day`,
      [organization],
    );
  const kept = [
    { day: '2026-03-08', count: spring, seconds: 23 * 3600, whole: true },
    { day: '2026-11-01', count: autumn, seconds: 25 * 3600, whole: true },
  ];
  expect(await days()).toEqual(kept);
  const again = await importInto(product, organization, files);
  expect(countsOf(again)['usage.csv']).toBe(`0 0 ${lines.length} 0`);
  expect(await days()).toEqual(kept);
  const exported = inputsOf(await exportOf(product, organization));
  expect(countsOf(await importInto(product, organization, exported))['usage.csv']).toBe(`0 0 ${lines.length} 0`);
  const other = await product.organization();
  await importInto(product, other, exported);
  expect(inputsOf(await exportOf(product, other))).toEqual(exported);
});

it('says which hour does not exist', async () => {
  const organization = await product.organization();
  const report = await importInto(product, organization, {
    ...place,
    'usage.csv': `${HEAD}One,M,2026-03-08T02:00,2026-03-08T03:00,1,gal\n`,
  });
  expect(report).toMatchObject({ written: false, problemsTotal: 1 });
  expect(report.files.at(-1)!.problems[0]).toMatchObject({
    line: 2,
    column: 'start',
    code: 'TIME_DOES_NOT_EXIST',
    found: '2026-03-08T02:00',
  });
});

it('takes weather, readings and usage by the hundred, counts them all, and the same again as the same', async () => {
  const organization = await product.organization();
  const files = world({ rows: 500 });
  const first = await importInto(product, organization, files);
  expect(first.problemsTotal).toBe(0);
  const counts = Object.fromEntries(
    ['weather.csv', 'readings.csv', 'usage.csv'].map((name) => [name, files[name]!.split('\n').length - 2]),
  );
  expect(Object.values(counts).reduce((sum, count) => sum + count, 0)).toBe(500);
  for (const [name, count] of Object.entries(counts)) expect(countsOf(first)[name]).toBe(`${count} 0 0 0`);
  const [stored] = await product.database.admin(
    `select (select count(*)::integer from weather_day where organization_id = $1) as weather, (select count(*)::integer from reading where organization_id = $1) as readings, (select sum(cardinality(volumes))::integer from usage_day where organization_id = $1) as usage`,
    [organization],
  );
  expect(stored).toEqual({ weather: counts['weather.csv'], readings: counts['readings.csv'], usage: counts['usage.csv'] });
  const again = await importInto(product, organization, files);
  for (const [name, count] of Object.entries(counts)) expect(countsOf(again)[name]).toBe(`0 0 ${count} 0`);
});
