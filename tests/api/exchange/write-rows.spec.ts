import { readFile } from 'node:fs/promises';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { sameValue } from '../../../apps/api/src/features/exchange/columns/column.js';
import { type FileName, importFiles } from '../../../apps/api/src/features/exchange/columns/import-files.js';
import { folderFiles } from '../../../apps/api/src/features/exchange/files/folder-files.js';
import { nothingKnown } from '../../../apps/api/src/features/exchange/drafts/known.js';
import { csvLine, guarded, unguarded } from '../../../apps/api/src/features/exchange/rows/csv-cell.js';
import type { AcceptedRow } from '../../../apps/api/src/features/exchange/rows/imported-row.js';
import { rejectedCsv } from '../../../apps/api/src/features/exchange/rows/rejected-rows.js';
import { settingsFacts, settingsLines } from '../../../apps/api/src/features/exchange/rows/settings-facts.js';
import { type WritableRow, writeRows } from '../../../apps/api/src/features/exchange/rows/write-rows.js';
import { inMemory, known, type Outcome, outcome, outcomeOf } from './imports-in-memory.js';

async function joined(pieces: AsyncIterable<string>): Promise<string> {
  let text = '';
  for await (const piece of pieces) text += piece;
  return text;
}

function written<File extends FileName>(file: File, rows: readonly WritableRow<File>[]): Promise<string> {
  return joined(writeRows(file, rows));
}

const cell = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 12 }),
  fc.constantFrom(
    '=1+1',
    '+5',
    '-5',
    '-5.',
    '@x',
    "'x",
    "''",
    '\t',
    'a,b',
    '"',
    '""',
    'a\nb',
    'a\r\nb',
    ' a ',
    '-',
    '=',
    '#N/A',
    '1e5',
    '\ufeffx',
    ';',
    '-.5',
  ),
);

it('any cells come back from a file as they were, and none is a formula', async () => {
  const row = fc.array(
    cell.map((text) => text.replaceAll('\0', '').replace(/[\uD800-\uDFFF]/gu, '\uFFFD')),
    { minLength: 3, maxLength: 3 },
  );
  await fc.assert(
    fc.asyncProperty(fc.array(row, { minLength: 1, maxLength: 5 }), fc.integer({ min: 1, max: 40 }), async (rows, piece) => {
      const text = csvLine(['a', 'b', 'c']) + rows.map(csvLine).join('');
      const cells: (readonly string[])[] = [];
      for await (const records of inMemory({ x: text }, piece).tables[0]?.records(() => false) ?? [])
        cells.push(...records.map((record) => record.cells));
      expect(cells.slice(1).map((one) => one.map(unguarded))).toEqual(
        rows.filter((one) => one.some((part) => guarded(part).trim() !== '')),
      );
      for (const written of cells.flat()) expect(/^[=+@\t]/.test(written) || /^-(?!(\d+\.?\d*|\.\d+)$)/.test(written)).toBe(false);
    }),
    { numRuns: 300 },
  );
});

const name = fc
  .string({ unit: 'grapheme', minLength: 1, maxLength: 20 })
  .map((text) => `n${text.replace(/[\p{C}\p{Z}]/gu, '').normalize('NFC')}`);
const maybe = <Value>(value: fc.Arbitrary<Value>): fc.Arbitrary<Value | null> => fc.option(value, { nil: null });
const kept = (min: number, max: number): fc.Arbitrary<number> =>
  fc.double({ min, max, noNaN: true }).map((value) => (Math.abs(value) < 1e-9 ? 0 : value));
const day = fc.integer({ min: -25_567, max: 47_846 }).map((days) => new Date(days * 86_400_000).toISOString().slice(0, 10));

const zoneValues = fc.record({
  property: fc.constant('Elm'),
  zone: name,
  controller: fc.constant(null),
  station: fc.constant(null),
  meter: fc.constantFrom(null, 'none', 'M1'),
  areaM2: kept(0.001, 9e6),
  plants: maybe(fc.constantFrom('turf cool-season', 'mixed')),
  waterNeed: maybe(fc.constantFrom('very low', 'high')),
  plantFactor: maybe(kept(0, 1.5)),
  method: fc.constantFrom('spray', 'subsurface drip'),
  precipMmPerH: maybe(kept(0.001, 1200)),
  flowLPerMin: maybe(kept(0.001, 37_000)),
  flowSource: maybe(fc.constantFrom('measured', 'assumed')),
  handLPerWeek: maybe(kept(0, 1e7)),
  duLq: maybe(kept(1e-6, 1)),
  soil: maybe(fc.constantFrom('sand', 'silty clay')),
  slopePercent: maybe(kept(0, 300)),
  sun: maybe(fc.constantFrom('full', 'shade')),
  density: kept(0.01, 1.5),
  rootDepthMm: maybe(kept(0.001, 2900)),
  mulchMm: maybe(kept(0, 1000)),
  leachingFraction: maybe(kept(0, 0.99)),
  establishedOn: maybe(day),
});

/** Values that were converted there and back agree to a billionth (promise P16 of this product). */
function close(a: unknown, b: unknown): boolean {
  return typeof a === 'number' && typeof b === 'number' ? Math.abs(a - b) <= 1e-9 * Math.max(Math.abs(a), Math.abs(b)) : sameValue(a, b);
}

it('zones that were made on a screen are written, read back as the same, and written again as the same bytes', async () => {
  await fc.assert(
    fc.asyncProperty(fc.uniqueArray(zoneValues, { selector: (zone) => zone.zone, minLength: 1, maxLength: 6 }), async (zones) => {
      const rows = zones.map((values) => ({ values, typed: {} }) as WritableRow<'zones'>);
      const text = await written('zones', rows);
      const found = await outcome({ 'zones.csv': text });
      expect(found.problems).toEqual([]);
      found.values.zones?.forEach((values, at) => {
        for (const [field, value] of Object.entries(zones[at] ?? {}))
          expect(close((values as Record<string, unknown>)[field], value), `${field} ${value}`).toBe(true);
      });
      expect(await written('zones', found.accepted.zones ?? [])).toBe(text);
    }),
    { numRuns: 200 },
  );
});

const instants = fc.uniqueArray(fc.integer({ min: Date.UTC(2026, 2, 7) / 60_000, max: Date.UTC(2026, 10, 3) / 60_000 }), {
  minLength: 1,
  maxLength: 8,
});
const aroundFallBack = fc.uniqueArray(
  fc.integer({ min: 0, max: 24 }).map((quarter) => Date.UTC(2026, 10, 1, 6) / 60_000 + quarter * 15),
  { minLength: 1, maxLength: 25 },
);

it('readings of any instants come back as the same instants, and as the same bytes', async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.oneof(instants, aroundFallBack),
      fc.array(fc.boolean(), { minLength: 25, maxLength: 25 }),
      async (minutes, typedLocally) => {
        const rows = [...minutes]
          .sort((a, b) => a - b)
          .map((minute, at) => {
            const readAt = minute * 60_000;
            // Some were typed in local time as a crew would, whichever occurrence that is.
            const local = new Date(readAt - (readAt < Date.UTC(2026, 10, 1, 9) && readAt >= Date.UTC(2026, 2, 8, 10) ? 7 : 8) * 3_600_000)
              .toISOString()
              .slice(0, 16);
            const values = { property: 'Elm', meter: 'M1', readAt, register: at, source: null, note: null };
            return {
              values,
              typed: (typedLocally[at] ? { read_at: local } : {}) as Record<string, string>,
              timeZone: 'America/Los_Angeles',
            };
          });
        const text = await written('readings', rows);
        const found = await outcome({ 'readings.csv': text });
        expect(found.problems).toEqual([]);
        expect(found.values.readings?.map((row) => row.readAt)).toEqual(rows.map((row) => row.values.readAt));
        expect(
          await written(
            'readings',
            (found.accepted.readings ?? []).map((row) => ({ ...row, timeZone: 'America/Los_Angeles' })),
          ),
        ).toBe(text);
      },
    ),
    { numRuns: 300 },
  );
});

it('gives back what was typed, until the value is another', async () => {
  const text = 'property,zone,area_sqft,method,meter,density,root_depth_in\nElm,Beds, 1000.0 ,DRIP,None,,06\n';
  const [row] = (await outcome({ 'zones.csv': text })).accepted.zones ?? [];
  if (!row) throw new TypeError('The row was not accepted.');
  const line = async (changed: Partial<typeof row.values>): Promise<string | undefined> =>
    (await written('zones', [{ values: { ...row.values, ...changed }, typed: row.typed }])).split('\n')[1];
  expect(await line({})).toBe('Elm,Beds,,,None," 1000.0 ",,,,DRIP,,,,,,,,,,06,,,');
  expect(await line({ areaM2: 92.90304 * 2, density: 0.8, rootDepthMm: null })).toBe('Elm,Beds,,,None,2000,,,,DRIP,,,,,,,,,0.8,,,,');
});

it('guards cells that a spreadsheet would take for formulas, and only those', () => {
  expect(csvLine(['=1', '+1', '-1', '-1.5', '-', '-x', '@a', "'a", '\ta', 'a=b', '5'])).toBe("'=1,'+1,-1,-1.5,'-,'-x,'@a,''a,'\ta,a=b,5\n");
});

it('writes rejected rows with what to mend, to be imported again', async () => {
  const text =
    'Zone,property,Colour,area sqft,method,problem\n=Beds,Elm,red,"1,000",drip,old words\nTrees,Ash,blue,10,fog,\nLawn 2,Elm,green,10,spray,\n';
  const files = { 'zones.csv': text };
  const found = await outcome(files);
  const header = text.split('\n')[0]?.split(',') ?? [];
  const english = await joined(rejectedCsv(header, found.rejected['zones'] ?? [], 'en'));
  const lines = english.split('\n');
  expect(lines[0]).toBe('Zone,property,Colour,area sqft,method,problem');
  expect(lines[1]).toBe(
    `'=Beds,Elm,red,"1,000",drip,"area_sqft: ""1,000"" has a thousands separator. Write the digits without it, and a dot for decimals."`,
  );
  expect(lines[2]).toContain('method: ""fog"" is not one of the words');
  expect(lines[2]).toContain('There is no property ""Ash""');
  expect(await joined(rejectedCsv(header, found.rejected['zones'] ?? [], 'es'))).toContain('lleva separador de miles');
  const mended = english.replace('"1,000"', '1000').replace('Ash', 'Elm').replace('fog', 'hand');
  const again = await outcome({ 'zones.csv': mended });
  expect(again.problems).toEqual([]);
  expect(again.values.zones?.map((row) => row.zone)).toEqual(['=Beds', 'Trees']);
});

const LOCAL_ZONE = 'America/Los_Angeles';

/** Every file of an import, written as an export would. */
async function exported(found: Outcome): Promise<Readonly<Record<string, string>>> {
  const files: Record<string, string> = {};
  for (const [file, rows] of Object.entries(found.accepted) as [FileName, readonly AcceptedRow[]][]) {
    const writable =
      file === 'settings'
        ? settingsFacts(rows as readonly AcceptedRow<'settings'>[]).flatMap((fact) => settingsLines(fact, LOCAL_ZONE))
        : rows;
    files[`${file}.csv`] = await joined(
      writeRows(file, writable.map((row) => ({ ...row, timeZone: LOCAL_ZONE })) as readonly WritableRow[]),
    );
  }
  return files;
}

it.each(['larkspur-grounds', 'saltbush-landscape'])('exports the demo company %s as it came in, and again the same', async (folder) => {
  const source = await folderFiles(new URL(`../../../apps/api/demo/${folder}`, import.meta.url).pathname);
  const first = await outcomeOf(source, nothingKnown(LOCAL_ZONE));
  expect(first.problems).toEqual([]);
  const files = await exported(first);
  for (const [name, text] of Object.entries(files))
    expect(text).toBe(await readFile(new URL(`../../../apps/api/demo/${folder}/${name}`, import.meta.url), 'utf8'));
  expect(Object.keys(files).length).toBe(source.tables.length);
  const second = await exported(await outcomeOf(inMemory(files), nothingKnown(LOCAL_ZONE)));
  expect(second).toEqual(files);
});

it('puts the lines of settings together as a fact and takes them apart again', async () => {
  const head = `${Object.keys(importFiles.settings).join(',')}\n`;
  const lines =
    'Elm,A,2026-05-01T10:00,,,P,Mon Wed,5:00,,1,10,2,\nElm,A,2026-05-01T10:00,,,P,Wed Mon,5:00,,2,7.50,,15\nElm,A,2026-05-02,left,off,,,,,,,,\n';
  const { accepted, problems } = await outcome({ 'settings.csv': head + lines }, known);
  expect(problems).toEqual([]);
  const facts = settingsFacts(accepted.settings ?? []);
  expect(facts.map(({ record, state, programs }) => ({ record, state, programs }))).toEqual([
    {
      record: 'found',
      state: 'on',
      programs: [
        {
          name: 'P',
          days: { kind: 'weekdays', weekdays: ['Mon', 'Wed'] },
          starts: [300],
          adjustPercent: 100,
          stations: [
            { station: 1, minutes: 10, cycles: 2, soakMinutes: 0 },
            { station: 2, minutes: 7.5, cycles: 1, soakMinutes: 15 },
          ],
        },
      ],
    },
    { record: 'left', state: 'off', programs: [] },
  ]);
  expect(
    await written(
      'settings',
      facts.flatMap((fact) => settingsLines(fact, LOCAL_ZONE)),
    ),
  ).toBe(head + lines);
});
