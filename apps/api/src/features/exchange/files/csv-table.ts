import { CsvScanner } from './csv-scanner.js';
import { decodeText } from './decode-text.js';
import { type Separator, sniffSeparator } from './sniff-separator.js';
import type { NamedFile, RawRecord, TableFile } from './table-file.js';

/** Enough text to see the whole header line of any sane file. */
const SNIFFED_CHARACTERS = 65_536;

/** A delimited text file as a table: decoded, its separator found, read row by row. */
export function csvTable(file: NamedFile): TableFile {
  return { name: file.name, bytes: file.open, records: (knows, separator) => csvRecords(file, knows, separator) };
}

async function* csvRecords(
  file: NamedFile,
  knows: (header: string) => boolean,
  separator?: Separator,
): AsyncGenerator<readonly RawRecord[]> {
  const scannerFor = (text: string): { scanner: CsvScanner; declared: boolean } => {
    const found = separator === undefined ? sniffSeparator(text, knows) : { separator, declared: false };
    return { scanner: new CsvScanner(found.separator), declared: found.declared };
  };
  let head = '';
  let scanner: CsvScanner | null = null;
  let declared = false;
  for await (const text of decodeText(file.open())) {
    if (!scanner) {
      head += text;
      if (head.length < SNIFFED_CHARACTERS) continue;
      ({ scanner, declared } = scannerFor(head));
      yield withoutDeclaration(scanner.push(head), declared);
      continue;
    }
    const rows = scanner.push(text);
    if (rows.length > 0) yield rows;
  }
  if (!scanner) {
    ({ scanner, declared } = scannerFor(head));
    yield withoutDeclaration([...scanner.push(head), ...scanner.end()], declared);
  } else {
    yield scanner.end();
  }
}

function withoutDeclaration(rows: readonly RawRecord[], declared: boolean): readonly RawRecord[] {
  return declared ? rows.slice(1) : rows;
}
