import type { LaidOutFile } from '../drafts/laid-out-file.js';
import type { Names } from '../drafts/names.js';
import { CsvScanner } from '../files/csv-scanner.js';
import { decodeText } from '../files/decode-text.js';
import { type Separator, sniffSeparator } from '../files/sniff-separator.js';
import { FileRefusal, type TableFile } from '../files/table-file.js';
import { stationLayouts } from './known-layouts.js';
import { type FeedFile, readMeterFeed } from './meter-feed/read-meter-feed.js';
import { type FirstLine, isStationHeading, readStationFile, stationFile } from './station/read-station-file.js';

/** A file whose layout was recognized by its content; it is read when the names that it may refer to are known. */
export interface RecognizedTable {
  /** The file of the import among whose rows its rows belong. */
  readonly among: 'weather' | 'usage';
  readonly read: (names: Names) => Promise<LaidOutFile>;
}

/** Lines that may stand before the heading: some networks tell much about themselves. */
const MOST_LINES_BEFORE = 40;
const SNIFFED_CHARACTERS = 65_536;
const XML = /^\ufeff?\s*</;
const isHeading = (cell: string): boolean => isStationHeading(stationLayouts, cell);
const ESPI = 'http://naesb.org/espi';

/** Recognizes a layout by what a file holds, whatever its name; null where it is none that is known. */
export async function recognizeTable(table: TableFile): Promise<RecognizedTable | null> {
  try {
    if (!table.bytes) return stationIn(table, await firstRows(table));
    const head = await headOf(table.bytes);
    return XML.test(head) ? feedIn({ ...table, bytes: table.bytes }, head) : stationIn(table, firstLines(head));
  } catch (error) {
    // What cannot be read at all is no layout; whoever reads it by its name says why.
    if (error instanceof FileRefusal || (error instanceof Error && 'code' in error)) return null;
    throw error;
  }
}

function feedIn(feed: FeedFile, head: string): RecognizedTable | null {
  return head.includes(ESPI) ? { among: 'usage', read: (names) => readMeterFeed(feed, names) } : null;
}

function stationIn(table: TableFile, lines: readonly FirstLine[]): RecognizedTable | null {
  for (const line of lines) {
    const file = stationFile(table, stationLayouts, line);
    if (file) return { among: 'weather', read: (names) => readStationFile(file, names) };
  }
  return null;
}

/** The lines of a text, each by itself: what is wrong further down does not hide the heading. */
function firstLines(head: string): FirstLine[] {
  const lines: FirstLine[] = [];
  for (const [at, text] of head
    .split(/\r\n|\r|\n/)
    .slice(0, MOST_LINES_BEFORE)
    .entries()) {
    if (text.trim() === '') continue;
    const { separator } = sniffSeparator(text, isHeading);
    lines.push({ line: at + 1, cells: cellsOf(text, separator), separator, isFirst: lines.length === 0 });
  }
  return lines;
}

function cellsOf(line: string, separator: Separator): readonly string[] {
  try {
    const scanner = new CsvScanner(separator);
    const [record] = [...scanner.push(line), ...scanner.end()];
    return record?.cells ?? [];
  } catch (error) {
    if (error instanceof FileRefusal) return [];
    throw error;
  }
}

async function firstRows(table: TableFile): Promise<FirstLine[]> {
  const rows: FirstLine[] = [];
  for await (const records of table.records(isHeading)) {
    for (const record of records.slice(0, MOST_LINES_BEFORE - rows.length)) rows.push({ ...record, isFirst: rows.length === 0 });
    if (rows.length >= MOST_LINES_BEFORE) break;
  }
  return rows;
}

/** How a text begins; of one that is no text, whatever of it is. */
async function headOf(open: () => AsyncIterable<Buffer>): Promise<string> {
  try {
    return await beginning(decodeText(open()));
  } catch (error) {
    if (error instanceof FileRefusal) return beginning(lossy(open()));
    throw error;
  }
}

async function beginning(texts: AsyncIterable<string>): Promise<string> {
  let head = '';
  for await (const text of texts) {
    head += text;
    if (head.length >= SNIFFED_CHARACTERS) break;
  }
  return head;
}

async function* lossy(bytes: AsyncIterable<Buffer>): AsyncGenerator<string> {
  for await (const chunk of bytes) yield chunk.toString('utf8');
}
