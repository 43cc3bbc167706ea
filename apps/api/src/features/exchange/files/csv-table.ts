import { CsvScanner } from './csv-scanner.js';
import { decodeText } from './decode-text.js';
import { sniffSeparator } from './sniff-separator.js';
import type { NamedFile, RawRecord, TableFile } from './table-file.js';

/** Enough text to see the whole header line of any sane file. */
const SNIFFED_CHARACTERS = 65_536;

/** A delimited text file as a table: decoded, its separator found, read row by row. */
export function csvTable(file: NamedFile): TableFile {
  return { name: file.name, bytes: file.open, records: (knows) => csvRecords(file, knows) };
}

async function* csvRecords(file: NamedFile, knows: (header: string) => boolean): AsyncGenerator<readonly RawRecord[]> {
  let head = '';
  let scanner: CsvScanner | null = null;
  let declared = false;
  for await (const text of decodeText(file.open())) {
    if (!scanner) {
      head += text;
      if (head.length < SNIFFED_CHARACTERS) continue;
      ({ scanner, declared } = scannerFor(head, knows));
      yield withoutDeclaration(scanner.push(head), declared);
      continue;
    }
    const rows = scanner.push(text);
    if (rows.length > 0) yield rows;
  }
  if (!scanner) {
    ({ scanner, declared } = scannerFor(head, knows));
    yield withoutDeclaration([...scanner.push(head), ...scanner.end()], declared);
  } else {
    yield scanner.end();
  }
}

function scannerFor(head: string, knows: (header: string) => boolean): { scanner: CsvScanner; declared: boolean } {
  const { separator, declared } = sniffSeparator(head, knows);
  return { scanner: new CsvScanner(separator), declared };
}

function withoutDeclaration(rows: readonly RawRecord[], declared: boolean): readonly RawRecord[] {
  return declared ? rows.slice(1) : rows;
}
