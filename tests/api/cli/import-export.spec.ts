import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, expect, it, vi } from 'vitest';
import { exportFolder } from '../../../apps/api/src/cli/export.command.js';
import { importFolder } from '../../../apps/api/src/cli/import.command.js';
import { recompute } from '../../../apps/api/src/cli/recompute.command.js';
import { runCommand } from '../../../apps/api/src/cli/run-command.js';
import { startApp, type TestApp } from '../../support/test-app.js';

let product: TestApp;
const place = mkdtempSync(path.join(tmpdir(), 'rillbook-cli-'));
const printed: string[] = [];
const said: string[] = [];
const run = (...words: string[]) => runCommand([importFolder, exportFolder, recompute], words, (line) => said.push(line));
const demo = path.resolve(import.meta.dirname, '../../../apps/api/demo/saltbush-landscape');

function folder(name: string, files: Readonly<Record<string, string>>): string {
  const made = path.join(place, name);
  mkdirSync(made);
  for (const [file, text] of Object.entries(files)) writeFileSync(path.join(made, file), text);
  return made;
}

beforeAll(async () => {
  product = await startApp();
  process.env['DATABASE_URL'] = product.database.adminUrl;
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

const bad = {
  'properties.csv': 'property,client,latitude\nElm,Elm HOA,\nOak,Elm HOA,95\n',
  'meters.csv': 'meter,property,unit\nM,Elm,CCF\nM,Oak,CCF\n',
};

it('prints every problem with file, line and column, writes nothing and makes no organization, unless the good rows are wished', async () => {
  const place = folder('bad', bad);
  const problems = [
    'properties.csv, line 3, column latitude: 95 is out of range. Expected: ≥ -90, ≤ 90.',
    'meters.csv, line 3, column property: "Oak" stands on line 3 of properties.csv, and that line was rejected. Mend it first.',
  ];
  for (const words of [['--dry-run'], []]) {
    printed.length = 0;
    expect(await run('import', place, '--organization', 'Bad Grounds', ...words)).toBe(1);
    expect(printed).toEqual(
      expect.arrayContaining([
        ...problems,
        'properties.csv: 1 new, 0 changed, 0 same, 1 wrong',
        'meters.csv: 1 new, 0 changed, 0 same, 1 wrong',
      ]),
    );
    expect(await product.database.admin('select from organization')).toHaveLength(0);
  }
  expect(printed.at(-1)).toBe('Nothing was written. Mend the rows above, or import the good ones with --good-rows.');
  expect(await run('import', place, '--organization', 'Bad Grounds', '--good-rows')).toBe(0);
  expect(printed).toContain('The organization "Bad Grounds" is new; it was made.');
  expect(await product.database.admin('select name from property')).toEqual([{ name: 'Elm' }]);
});

it('imports a folder with its accounts, and exports it so that importing and exporting again gives the same bytes', async () => {
  expect(await run('import', demo, '--organization', 'Salt', '--dry-run')).toBe(0);
  expect(printed.at(-1)).toBe('Nothing was written: this was a dry run.');
  expect(await run('import', demo, '--organization', 'Salt')).toBe(0);
  expect(printed.slice(-2)).toEqual([
    'Everything was imported.',
    expect.stringMatching(/^compute accounts: 5 properties, \d+ months computed\.$/),
  ]);
  expect(await run('export', path.join(place, 'one'), '--organization', 'Salt')).toBe(0);
  expect(await run('import', path.join(place, 'one'), '--organization', 'Salt again')).toBe(0);
  expect(await run('export', path.join(place, 'two'), '--organization', 'Salt again')).toBe(0);
  const names = readdirSync(path.join(place, 'one')).toSorted();
  expect(readdirSync(path.join(place, 'two')).toSorted()).toEqual(names);
  expect(names).toEqual([...readdirSync(demo), 'accounts.csv', 'findings.csv'].toSorted());
  const text = (where: string, name: string): string => readFileSync(path.join(place, where, name), 'utf8');
  for (const name of names) expect(text('two', name), name).toBe(text('one', name));
  expect(text('one', 'accounts.csv').split('\n')[0]).toBe(
    'property,meter,month,allowed_gal,needed_gal,programmed_gal,metered_gal,allowed_sd_gal,needed_sd_gal,programmed_sd_gal,metered_sd_gal',
  );
  expect(text('one', 'findings.csv').split('\n')[0]).toBe(
    'property,meter,controller,zone,kind,from,until,gallons,money,confidence,state,opened_at,says',
  );
});

it('writes computed volumes in US gallons, as the accounts hold them in litres', async () => {
  const rows = await product.database.admin<{ allowed: number }>(
    `select allowed_l as allowed from month_account a join property p on p.id = a.property_id join organization o on o.id = a.organization_id where o.name = 'Salt' and p.name = 'Tern House' and a.month = '2026-08-01'`,
  );
  const line = readFileSync(path.join(place, 'one', 'accounts.csv'), 'utf8')
    .split('\n')
    .find((row) => row.startsWith('Tern House,,2026-08,'));
  // A US gallon is 3.785411784 L exactly (NIST Handbook 44, appendix C).
  expect(Number(line!.split(',')[3])).toBeCloseTo(rows[0]!.allowed / 3.785411784, 3);
});

it('computes again, and takes a zip for a folder', async () => {
  expect(await run('recompute', '--organization', 'Salt')).toBe(0);
  expect(printed).toEqual(['Salt, compute accounts: 5 properties, 0 months computed.']);
  const { zipSync, strToU8 } = await import('fflate');
  writeFileSync(path.join(place, 'one.zip'), zipSync({ 'clients.csv': strToU8('client\nNew client\n') }));
  expect(await run('import', path.join(place, 'one.zip'), '--organization', 'Salt')).toBe(0);
  expect(printed).toContain('clients.csv: 1 new, 0 changed, 0 same, 0 wrong');
});

it('answers 2 to what it does not understand', async () => {
  const first = async (...words: string[]): Promise<string> => {
    said.length = 0;
    expect(await run(...words)).toBe(2);
    return said[0]!.split('\n')[0]!;
  };
  expect(await first('import')).toBe('FOLDER is missing.');
  expect(await first('import', demo)).toBe('--organization is missing. There are: Bad Grounds, Salt, Salt again.');
  expect(await first('import', path.join(place, 'nowhere'), '--organization', 'Salt')).toMatch(/^There is no folder /);
  expect(await first('import', demo, 'Salt', 'Landscape')).toMatch(/^One folder is expected; "Salt" is too much\./);
  expect(await first('export', place, '--organization', 'Pepper')).toBe('There is no organization "Pepper".');
  expect(await first('import', demo, '--organisation', 'Salt')).toMatch(/^Unknown option '--organisation'/);
});
