import { expect, it } from 'vitest';
import { csvTable } from '../../../apps/api/src/features/exchange/files/csv-table.js';
import { nothingKnown } from '../../../apps/api/src/features/exchange/drafts/known.js';
import { readImport } from '../../../apps/api/src/features/exchange/rows/read-import.js';
import { writeRows } from '../../../apps/api/src/features/exchange/rows/write-rows.js';
import { known } from './imports-in-memory.js';

const ROWS = 200_000;
const HOUR = 3_600_000;
const FIRST = Date.UTC(2000, 0, 1);
const MOST_GROWTH = 96 * 1024 ** 2;

function* usageText(): Generator<string> {
  yield 'property,meter,start,end,volume\n';
  for (let at = 0; at < ROWS; at += 1) {
    const [start, end] = [FIRST + at * HOUR, FIRST + (at + 1) * HOUR].map((instant) => `${new Date(instant).toISOString().slice(0, 16)}Z`);
    yield `Elm,M1,${start},${end},${at % 7 === 0 ? 'x' : '0.5'}\n`;
  }
}

function* settingsText(): Generator<string> {
  yield 'property,controller,effective_at,program,days,starts,station,minutes\n';
  for (let at = 0; at < ROWS; at += 1) {
    const effectiveAt = `${new Date(FIRST + Math.floor(at / 12) * HOUR).toISOString().slice(0, 16)}Z`;
    yield `Elm,A,${effectiveAt},P,Mon Wed,05:00,${(at % 12) + 1},${at % 40 === 0 ? '' : '10'}\n`;
  }
}

async function* bytes(lines: Iterable<string>): AsyncGenerator<Buffer> {
  let text = '';
  for (const line of lines) {
    text += line;
    if (text.length < 65_536) continue;
    yield Buffer.from(text);
    text = '';
  }
  yield Buffer.from(text);
}

/** Reads a file and watches the heap while its batches go by. */
async function watched(
  name: string,
  lines: () => Iterable<string>,
): Promise<{ accepted: number; rejected: number; largest: number; growth: number }> {
  const source = { tables: [csvTable({ name, open: () => bytes(lines()) })], refused: [] };
  const seen = { accepted: 0, rejected: 0, largest: 0, growth: 0 };
  const before = process.memoryUsage().heapUsed;
  for await (const file of readImport(source, known)) {
    if (file.status !== 'read') throw new TypeError(`${name} was refused: ${JSON.stringify(file.problems)}`);
    for await (const batch of file.batches()) {
      seen.largest = Math.max(seen.largest, batch.length);
      for (const row of batch) seen[row.verdict] += 1;
      seen.growth = Math.max(seen.growth, process.memoryUsage().heapUsed - before);
    }
  }
  return seen;
}

it('reads 200,000 rows of usage in batches, in bounded memory', async () => {
  const seen = await watched('usage.csv', usageText);
  expect(seen.accepted + seen.rejected).toBe(ROWS);
  expect(seen.rejected).toBe(Math.ceil(ROWS / 7));
  expect(seen.largest).toBeLessThanOrEqual(2000);
  expect(seen.growth).toBeLessThan(MOST_GROWTH);
});

it('reads 200,000 lines of settings fact by fact, in bounded memory', async () => {
  const seen = await watched('settings.csv', settingsText);
  expect(seen.accepted + seen.rejected).toBe(ROWS);
  // A line in forty has no minutes; its whole fact of twelve lines is rejected.
  const facts = new Set(Array.from({ length: ROWS / 40 }, (_, at) => Math.floor((at * 40) / 12)));
  expect(seen.rejected).toBe(facts.size * 12);
  expect(seen.largest).toBeLessThanOrEqual(2000);
  expect(seen.growth).toBeLessThan(MOST_GROWTH);
});

it('refuses facts whose lines lie further apart than can be held, and reads the rest', async () => {
  function* scattered(): Generator<string> {
    yield 'property,controller,effective_at,program,days,starts,station,minutes\n';
    for (const station of [1, 2]) {
      for (let at = 0; at < 60_000; at += 1)
        yield `Elm,A,${new Date(FIRST + at * HOUR).toISOString().slice(0, 16)}Z,P,daily,05:00,${station},10\n`;
    }
  }
  const seen = await watched('settings.csv', scattered);
  expect(seen.accepted).toBe(100_000);
  expect(seen.rejected).toBe(20_000);
});

it('writes 200,000 rows in pieces, in bounded memory', async () => {
  function* rows(): Generator<{ values: Parameters<typeof valuesOf>[0]; typed: Record<string, string> }> {
    for (let at = 0; at < ROWS; at += 1) yield { values: valuesOf({ at }), typed: {} } as never;
  }
  const valuesOf = ({ at }: { at: number }): { at: number } =>
    ({
      station: 'S1',
      day: new Date(FIRST + at * HOUR).toISOString().slice(0, 10),
      tmaxC: at % 40,
      tminC: null,
      rhMaxPercent: null,
      rhMinPercent: null,
      dewPointC: null,
      windMPerS: null,
      windHeightM: null,
      solarMjPerM2: null,
      rainMm: 0,
      givenEtoMm: null,
    }) as never;
  const before = process.memoryUsage().heapUsed;
  let [lines, growth] = [0, 0];
  for await (const piece of writeRows('weather', rows() as never)) {
    lines += piece.split('\n').length - 1;
    growth = Math.max(growth, process.memoryUsage().heapUsed - before);
  }
  expect(lines).toBe(ROWS + 1);
  expect(growth).toBeLessThan(MOST_GROWTH);
});

it('notices a file that is another when it is read again', async () => {
  let reads = 0;
  const text = (): string => `client\nElm\n${reads++ === 0 ? 'Oak\n' : ''}`;
  const source = { tables: [csvTable({ name: 'clients.csv', open: () => bytes([text()]) })], refused: [] };
  const read = async (): Promise<void> => {
    for await (const file of readImport(source, nothingKnown('UTC')))
      if (file.status === 'read') for await (const batch of file.batches()) expect(batch.length).toBe(1);
  };
  await expect(read()).rejects.toMatchObject({ code: 'FILE_CHANGED', parts: { found: '1', expected: '2' } });
});
