import type { LaidOutFile } from '../drafts/laid-out-file.js';
import type { Names } from '../drafts/names.js';
import { FileRefusal, type RawRecord, type TableFile } from '../files/table-file.js';
import { stationLayouts } from './known-layouts.js';
import { type FeedFile, readMeterFeed } from './meter-feed/read-meter-feed.js';
import { isStationHeading, readStationFile, stationFile } from './station/read-station-file.js';

/** A file whose layout was recognized by its content; it is read when the names that it may refer to are known. */
export interface RecognizedTable {
  /** The file of the import among whose rows its rows belong. */
  readonly among: 'weather' | 'usage';
  readonly read: (names: Names) => Promise<LaidOutFile>;
}

/** Lines that may stand before the heading: some networks tell much about themselves. */
const MOST_LINES_BEFORE = 40;
const SNIFFED_BYTES = 65_536;
const XML = /^\ufeff?\s*</;
const ESPI = 'http://naesb.org/espi';

/** Recognizes a layout by what a file holds, whatever its name; null where it is none that is known. */
export async function recognizeTable(table: TableFile): Promise<RecognizedTable | null> {
  try {
    const head = table.bytes ? await headOf(table.bytes()) : '';
    return table.bytes && XML.test(head) ? feedIn({ ...table, bytes: table.bytes }, head) : await stationIn(table);
  } catch (error) {
    // What cannot be read at all is no layout; whoever reads it by its name says why.
    if (error instanceof FileRefusal || (error instanceof Error && 'code' in error)) return null;
    throw error;
  }
}

function feedIn(feed: FeedFile, head: string): RecognizedTable | null {
  return head.includes(ESPI) ? { among: 'usage', read: (names) => readMeterFeed(feed, names) } : null;
}

async function stationIn(table: TableFile): Promise<RecognizedTable | null> {
  const lines = await firstLines(table);
  for (const [at, line] of lines.entries()) {
    const file = stationFile(table, stationLayouts, line, at === 0);
    if (file) return { among: 'weather', read: (names) => readStationFile(file, names) };
  }
  return null;
}

async function firstLines(table: TableFile): Promise<readonly RawRecord[]> {
  const lines: RawRecord[] = [];
  for await (const records of table.records((cell) => isStationHeading(stationLayouts, cell))) {
    lines.push(...records.slice(0, MOST_LINES_BEFORE - lines.length));
    if (lines.length >= MOST_LINES_BEFORE) break;
  }
  return lines;
}

async function headOf(bytes: AsyncIterable<Buffer>): Promise<string> {
  let head = '';
  for await (const chunk of bytes) {
    head += chunk.toString('utf8');
    if (head.length >= SNIFFED_BYTES) break;
  }
  return head;
}
