import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, expect, it, vi } from 'vitest';
import { importFolder } from '../../../apps/api/src/cli/import.command.js';
import { runCommand } from '../../../apps/api/src/cli/run-command.js';
import { startApp, type TestApp } from '../../support/test-app.js';
import { CODED_DAILY, DAYMET, feed, PRISM } from '../exchange/layouts/built-files.js';

let product: TestApp;
const place = mkdtempSync(path.join(tmpdir(), 'rillbook-cli-layouts-'));
const printed: string[] = [];
const said: string[] = [];
const run = (...words: string[]) => runCommand([importFolder], ['import', ...words, '--organization', 'Dry'], (line) => said.push(line));

function folder(name: string, files: Readonly<Record<string, string>>): string {
  const made = path.join(place, name);
  mkdirSync(made);
  for (const [file, text] of Object.entries(files)) writeFileSync(path.join(made, file), text);
  return made;
}

beforeAll(async () => {
  product = await startApp();
  process.env['DATABASE_URL'] = product.database.adminUrl;
  const world = folder('world', {
    'stations.csv': 'station,latitude,longitude\nDry Lake,36,-115\nWet Lake,37,-115\n',
    'properties.csv': 'property,client,weather_station\nElm,Elm HOA,Dry Lake\n',
    'meters.csv': 'meter,property,unit\nM1,Elm,gal\nM2,Elm,gal\n',
  });
  expect(await run(world)).toBe(0);
});
afterAll(async () => {
  delete process.env['DATABASE_URL'];
  rmSync(place, { recursive: true, force: true });
  await product.close();
});
beforeEach(() => {
  said.length = printed.length = 0;
  vi.spyOn(console, 'log').mockImplementation((line: string) => void printed.push(line));
});
afterEach(() => vi.restoreAllMocks());

it('says what must be said of a station’s file, and imports it when it is', async () => {
  const file = path.join(folder('one', { 'anything.txt': CODED_DAILY }), 'anything.txt');
  expect(await run(file)).toBe(1);
  expect(printed).toContain('anything.txt: This file holds the days of one weather station. Say which: Dry Lake, Wet Lake.');
  expect(await run(file, '--station', 'Dry Lake')).toBe(1);
  expect(printed).toContain('anything.txt: The file gives wind, but not the height of the anemometer. State it.');
  expect(await run(file, '--station', 'Dry Lake', '--wind-height', '10ft')).toBe(0);
  expect(printed).toContain('anything.txt: 3 new, 0 changed, 0 same, 0 wrong');
  expect(await run(file, '--station', 'Dry Lake', '--wind-height', '10 ft')).toBe(0);
  expect(printed).toContain('anything.txt: 0 new, 0 changed, 3 same, 0 wrong');
  expect(await product.database.admin('select distinct wind_height_m from weather_day')).toEqual([{ wind_height_m: 3.048 }]);
});

it('takes a folder of several layouts for one station, and words beside them', async () => {
  const place = folder('several', { 'a.csv': DAYMET, 'b.csv': PRISM, 'readme.txt': 'Downloaded today.\n' });
  expect(await run(place, '--station', 'Wet Lake')).toBe(0);
  expect(printed).toEqual(expect.arrayContaining(['a.csv: 3 new, 0 changed, 0 same, 0 wrong', 'b.csv: 2 new, 0 changed, 0 same, 0 wrong']));
  expect(printed.some((line) => line.startsWith('readme.txt: This file is not one of the import files'))).toBe(true);
});

it('imports a meter’s feed', async () => {
  const file = path.join(folder('feed', { 'feed.xml': feed() }), 'feed.xml');
  expect(await run(file)).toBe(1);
  expect(printed).toContain('feed.xml: This file counts the water of one meter. Say which: the property and the meter.');
  expect(await run(file, '--property', 'Elm', '--meter', 'M2', '--dry-run')).toBe(0);
  expect(await product.database.admin('select 1 from usage_day')).toHaveLength(0);
  expect(await run(file, '--property', 'Elm', '--meter', 'M2')).toBe(0);
  expect(await product.database.admin('select m.name from usage_day d join meter m on m.id = d.meter_id')).toEqual([{ name: 'M2' }]);
});

it('refuses an option that no file has a use for', async () => {
  const words = folder('words', { 'clients.csv': 'client\nOak HOA\n', 'readme.txt': 'Downloaded today.\n' });
  expect(await run(words, '--station', 'Dry Lake')).toBe(2);
  expect(said.at(-1)).toContain('--station:');
  expect(said.at(-1)).toContain('holds no file in a layout of a weather station');
  expect(await run(words, '--wind-height', '10ft')).toBe(2);
  expect(await run(path.join(place, 'one'), '--meter', 'M1')).toBe(2);
  expect(said.at(-1)).toContain('--meter:');
  expect(await product.database.admin(`select 1 from client where name = 'Oak HOA'`)).toHaveLength(0);
  expect(await run(words)).toBe(0);
});

it.each(['tall', '0m', '3', '-3m', '3 yd'])('answers 2 to the wind height "%s"', async (height) => {
  expect(await run(place, '--station', 'Dry Lake', `--wind-height=${height}`)).toBe(2);
  expect(said[0]).toContain(`--wind-height: found "${height}", expected a height with its unit, such as 3m or 10ft.`);
});
