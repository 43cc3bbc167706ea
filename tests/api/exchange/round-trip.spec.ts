import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { folderFiles } from '../../../apps/api/src/features/exchange/files/folder-files.js';
import { startApp, type TestApp } from '../../support/test-app.js';
import { countsOf, exportOf, importInto, inputsOf, totalsOf } from './exchange-kit.js';
import { everyColumn } from './every-column.js';

const demo = (folder: string): string => path.resolve(import.meta.dirname, '../../../apps/api/demo', folder);

let product: TestApp;
beforeAll(async () => {
  product = await startApp();
});
afterAll(() => product.close());

it.each(['larkspur-grounds', 'saltbush-landscape'])('gives the %s folder back byte for byte from its second export on', async (folder) => {
  const first = await product.organization();
  const report = await importInto(product, first, await folderFiles(demo(folder)));
  expect(report.written).toBe(true);
  expect(totalsOf(report)).toEqual({ new: report.rows, changed: 0, same: 0, wrong: 0 });
  const exported = inputsOf(await exportOf(product, first));

  const second = await product.organization();
  await importInto(product, second, exported);
  const again = inputsOf(await exportOf(product, second));
  expect(Object.keys(again)).toEqual(Object.keys(exported));
  for (const name of Object.keys(exported)) expect(again[name], name).toBe(exported[name]);

  const same = await importInto(product, second, exported);
  expect(totalsOf(same)).toEqual({ new: 0, changed: 0, same: same.rows, wrong: 0 });
});

it('gives every cell of the demo back as it was typed', async () => {
  const organization = await product.organization();
  await importInto(product, organization, await folderFiles(demo('larkspur-grounds')));
  const exported = await exportOf(product, organization);
  for (const name of [
    'clients',
    'stations',
    'properties',
    'meters',
    'controllers',
    'zones',
    'plantings',
    'rules',
    'backflow',
    'weather',
    'pauses',
  ]) {
    const lines = (await readFile(path.join(demo('larkspur-grounds'), `${name}.csv`), 'utf8')).trim().split('\n');
    expect(exported[`${name}.csv`]!.trim().split('\n').toSorted(), name).toEqual(lines.toSorted());
  }
});

it('gives a world with every column back byte for byte, in other units than were typed too', async () => {
  const first = await product.organization();
  const report = await importInto(product, first, everyColumn);
  expect(report.files.flatMap(({ problems }) => problems)).toEqual([]);
  const exported = inputsOf(await exportOf(product, first));
  expect(Object.keys(exported)).toHaveLength(16);
  for (const name of Object.keys(exported)) expect(exported[name]!.split('\n')[0], name).toBe(everyColumn[name]!.split('\n')[0]);
  const second = await product.organization();
  await importInto(product, second, exported);
  expect(inputsOf(await exportOf(product, second))).toEqual(exported);
  // Without its typed cells every value is written in the file's unit, and still reads back as the same.
  await product.database.admin(`update zone set typed = '{}' where organization_id = $1`, [second]);
  await product.database.admin(`update weather_day set typed = '{}' where organization_id = $1`, [second]);
  const bare = inputsOf(await exportOf(product, second));
  const third = await product.organization();
  await importInto(product, third, bare);
  expect(inputsOf(await exportOf(product, third))).toEqual(bare);
  const back = await importInto(product, second, bare);
  expect(countsOf(back)['zones.csv']).toBe('0 2 0 0');
  expect(await product.database.admin(`select version from zone where organization_id = $1`, [second])).toEqual([
    { version: 1 },
    { version: 1 },
  ]);
});
