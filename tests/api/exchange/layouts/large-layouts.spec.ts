import { expect, it } from 'vitest';
import { csvTable } from '../../../../apps/api/src/features/exchange/files/csv-table.js';
import { readImport } from '../../../../apps/api/src/features/exchange/rows/read-import.js';
import { known } from '../imports-in-memory.js';
import { feed, interval, MIDNIGHT } from './built-files.js';

const INTERVALS = 200_000;
const YEARS = 12;
const MOST_GROWTH = 96 * 1024 ** 2;

async function* inPieces(pieces: Iterable<string>): AsyncGenerator<Buffer> {
  let text = '';
  for (const piece of pieces) {
    text += piece;
    if (text.length < 65_536) continue;
    yield Buffer.from(text);
    text = '';
  }
  yield Buffer.from(text);
}

/** A feed with very many intervals, each a quarter of an hour. */
function* manyIntervals(): Generator<string> {
  const [before = '', after = ''] = feed({ readings: '|' }).split('|');
  yield before;
  for (let at = 0; at < INTERVALS; at += 1) yield interval(MIDNIGHT + at * 900, at % 100, '', 900);
  yield after;
}

/** Twelve years of hours. */
function* manyHours(): Generator<string> {
  yield 'YEAR,MONTH,DAY,HOUR,OB,TP,WS,SI\n';
  const [first, last] = [Date.UTC(2010, 0, 1, 1), Date.UTC(2010 + YEARS, 0, 1)];
  for (let at = first; at <= last; at += 3_600_000) {
    const [year, month, day, hour] = new Date(at).toISOString().split(/[-T:]/);
    yield `${year},${month},${day},${hour},50.25,40.10,5.55,1.25\n`;
  }
}

/** Reads a file and watches the heap while its batches go by. */
async function watched(
  name: string,
  pieces: () => Iterable<string>,
  meaning: object,
): Promise<{ accepted: number; largest: number; growth: number }> {
  const source = { tables: [{ ...csvTable({ name, open: () => inPieces(pieces()) }), meaning }], refused: [] };
  const seen = { accepted: 0, largest: 0, growth: 0 };
  const before = process.memoryUsage().heapUsed;
  for await (const file of readImport(source, known)) {
    if (file.status !== 'read') throw new TypeError(`${name} was refused: ${JSON.stringify(file.problems)}`);
    for await (const batch of file.batches()) {
      seen.largest = Math.max(seen.largest, batch.length);
      seen.accepted += batch.filter(({ verdict }) => verdict === 'accepted').length;
      seen.growth = Math.max(seen.growth, process.memoryUsage().heapUsed - before);
    }
  }
  return seen;
}

it('reads a feed of 200,000 intervals in bounded memory', async () => {
  const seen = await watched('feed.xml', manyIntervals, { property: 'Oak', meter: 'M1' });
  expect(seen.accepted).toBe(INTERVALS);
  expect(seen.largest).toBeLessThanOrEqual(2000);
  expect(seen.growth).toBeLessThan(MOST_GROWTH);
});

it('reads twelve years of hours in bounded memory, leap years too', async () => {
  const seen = await watched('hours.csv', manyHours, { station: 'S1', windHeightM: 2 });
  // 2012, 2016 and 2020 have a day more.
  expect(seen.accepted).toBe(YEARS * 365 + 3);
  expect(seen.growth).toBeLessThan(MOST_GROWTH);
});
