import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { strToU8, zipSync } from 'fflate';
import { uploadedFiles } from '../../../apps/api/src/features/exchange/files/uploaded-files.js';
import { type Outcome, outcomeOf } from './imports-in-memory.js';

/** What goes into an archive: text or bytes by path. */
export type Entries = Readonly<Record<string, string | Uint8Array>>;

/** An archive of the entries. */
export function zipped(entries: Entries): Buffer {
  const files = Object.fromEntries(
    Object.entries(entries).map(([name, content]) => [name, typeof content === 'string' ? strToU8(content) : content]),
  );
  return Buffer.from(zipSync(files));
}

/** Changes a field of the first entry's directory record, and of its local header where it has one. */
export function patched(zip: Buffer, field: keyof typeof DIRECTORY_FIELDS, value: number): Buffer {
  const copy = Buffer.from(zip);
  const record = copy.indexOf(Buffer.from('PK\x01\x02', 'latin1'));
  const [offset, size] = DIRECTORY_FIELDS[field];
  copy.writeUIntLE(value, record + offset, size);
  return copy;
}

/** Places in a central directory record, from PKWARE's APPNOTE.TXT 6.3.10, section 4.3.12. */
const DIRECTORY_FIELDS = { flags: [8, 2], crc: [16, 4], unpackedBytes: [24, 4], externalAttributes: [38, 4] } as const;

/** Imports files as they would have been uploaded: put on the disk, opened, read to their end, removed. */
export async function uploaded(files: Readonly<Record<string, Buffer | string>>): Promise<Outcome> {
  const folder = await mkdtemp(path.join(tmpdir(), 'rillbook-upload-'));
  try {
    const uploads = [];
    for (const [name, content] of Object.entries(files)) {
      const file = path.join(folder, String(uploads.length));
      await writeFile(file, content);
      uploads.push({ name, path: file });
    }
    return await outcomeOf(await uploadedFiles(uploads));
  } finally {
    await rm(folder, { recursive: true });
  }
}

const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const RELATIONS = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006/relationships';

/** The parts of a workbook that a case may change. */
export interface Book {
  readonly rows: string;
  readonly strings?: readonly string[];
  /** Number format codes: style n + 1 shows numbers by the n-th. */
  readonly formats?: readonly string[];
  readonly date1904?: boolean;
  readonly sheetName?: string;
  readonly more?: Entries;
}

/** The entries of a workbook as spreadsheets write it (ECMA-376). */
export function bookEntries({ rows, strings = [], formats = [], date1904 = false, sheetName = 'Sheet1', more = {} }: Book): Entries {
  const numFmts = formats.map((code, at) => `<numFmt numFmtId="${164 + at}" formatCode="${code}"/>`).join('');
  const xfs = ['<xf numFmtId="0"/>', ...formats.map((_, at) => `<xf numFmtId="${164 + at}"/>`)].join('');
  return {
    '_rels/.rels': `<Relationships xmlns="${PACKAGE}"><Relationship Id="rId1" Type="${RELATIONS}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    'xl/workbook.xml': `<workbook xmlns="${MAIN}" xmlns:r="${RELATIONS}"><workbookPr date1904="${date1904 ? 1 : 0}"/><sheets><sheet name="${sheetName}" sheetId="1" r:id="rId1"/><sheet name="Other" sheetId="2" r:id="rId2"/></sheets></workbook>`,
    'xl/_rels/workbook.xml.rels': `<Relationships xmlns="${PACKAGE}"><Relationship Id="rId2" Type="${RELATIONS}/worksheet" Target="worksheets/sheet2.xml"/><Relationship Id="rId1" Type="${RELATIONS}/worksheet" Target="worksheets/sheet1.xml"/></Relationships>`,
    'xl/worksheets/sheet1.xml': `<worksheet xmlns="${MAIN}"><sheetData>${rows}</sheetData></worksheet>`,
    'xl/worksheets/sheet2.xml': `<worksheet xmlns="${MAIN}"><sheetData><row r="1"><c r="A1" t="str"><v>never read</v></c></row></sheetData></worksheet>`,
    'xl/sharedStrings.xml': `<sst xmlns="${MAIN}">${strings.map((text) => `<si>${text}</si>`).join('')}</sst>`,
    'xl/styles.xml': `<styleSheet xmlns="${MAIN}"><numFmts>${numFmts}</numFmts><cellStyleXfs><xf numFmtId="14"/></cellStyleXfs><cellXfs>${xfs}</cellXfs></styleSheet>`,
    ...more,
  };
}

/** A workbook of a table of cells: text as inline strings, cells that begin with `<` as they are. */
export function bookRows(table: readonly (readonly string[])[]): string {
  return table
    .map((cells, row) => {
      const written = cells.map((cell, column) => bookCell(cell, `${String.fromCharCode(65 + column)}${row + 1}`));
      return `<row r="${row + 1}">${written.join('')}</row>`;
    })
    .join('');
}

function bookCell(cell: string, place: string): string {
  if (cell === '') return '';
  if (cell.startsWith('<')) return cell.replace('<c', `<c r="${place}"`);
  return `<c r="${place}" t="inlineStr"><is><t>${cell.replaceAll('&', '&amp;').replaceAll('<', '&lt;')}</t></is></c>`;
}
