import { type DateSystem, formOfNumber, type NumberForm } from './xlsx-cell.js';
import { FileRefusal } from './table-file.js';
import { XmlEvents, type XmlReader } from './xml-events.js';
import { type ArchivedFile, megabytes } from './zip-archive.js';

const MOST_SHARED_CHARACTERS = 64 * 1024 ** 2;
const MOST_SMALL_PART = 16 * 1024 ** 2;
const MOST_SHEET_BYTES = 512 * 1024 ** 2;

/** What the parts of a workbook say before its first sheet is read. */
export interface Workbook {
  readonly sheetName: string;
  readonly sheet: ArchivedFile;
  readonly dateSystem: DateSystem;
}

type Attributes = Readonly<Record<string, string>>;

/** Finds the first sheet of a workbook by its relationships; external targets are never followed. */
export async function openWorkbook(parts: readonly ArchivedFile[]): Promise<Workbook> {
  const root = await relationships(parts, '_rels/.rels');
  const bookPath = [...root.values()].find((target) => target.type.endsWith('/officeDocument'))?.path ?? 'xl/workbook.xml';
  const book = partAt(parts, bookPath);
  if (!book) throw new FileRefusal('XLSX_DAMAGED');
  let dateSystem: DateSystem = 1900;
  const sheets: SheetEntry[] = [];
  await readPart(book, MOST_SMALL_PART, (name, attributes) => {
    if (name === 'workbookPr' && /^(1|true)$/.test(attributes['date1904'] ?? '')) dateSystem = 1904;
    if (name === 'sheet') sheets.push({ name: attributes['name'] ?? '', id: relationId(attributes) });
  });
  const first = sheets[0];
  if (!first) throw new FileRefusal('XLSX_NO_SHEET');
  return { sheetName: first.name, sheet: await sheetPart(parts, bookPath, first), dateSystem };
}

interface SheetEntry {
  readonly name: string;
  readonly id: string;
}

async function sheetPart(parts: readonly ArchivedFile[], bookPath: string, entry: SheetEntry): Promise<ArchivedFile> {
  const folder = bookPath.slice(0, bookPath.lastIndexOf('/') + 1);
  const targets = await relationships(parts, `${folder}_rels/${bookPath.slice(folder.length)}.rels`, folder);
  const sheet = partAt(parts, targets.get(entry.id)?.path ?? '');
  if (!sheet) throw new FileRefusal('XLSX_NO_SHEET');
  if (sheet.bytes > MOST_SHEET_BYTES)
    throw new FileRefusal('XLSX_TOO_LARGE', { found: megabytes(sheet.bytes), expected: megabytes(MOST_SHEET_BYTES) });
  return sheet;
}

/** The texts that cells point at by number. */
export async function sharedStrings(parts: readonly ArchivedFile[]): Promise<readonly string[]> {
  const part = parts.find(({ path }) => /(^|\/)sharedStrings\.xml$/i.test(path));
  const texts: string[] = [];
  if (!part) return texts;
  let held = 0;
  let text = '';
  const reading = new RunText();
  await readXml(part, {
    opened: (name) => {
      reading.opened(name);
      if (name === 'si') text = '';
    },
    text: (piece) => {
      if (!reading.counts) return;
      text += piece;
      held += piece.length;
      if (held > MOST_SHARED_CHARACTERS)
        throw new FileRefusal('XLSX_TOO_LARGE', { found: 'sharedStrings.xml', expected: megabytes(MOST_SHARED_CHARACTERS) });
    },
    closed: (name) => {
      reading.closed(name);
      if (name === 'si') texts.push(unescaped(text));
    },
  });
  return texts;
}

/** How each cell style shows numbers, by the style's number. */
export async function numberForms(parts: readonly ArchivedFile[]): Promise<readonly NumberForm[]> {
  const part = parts.find(({ path }) => /(^|\/)styles\.xml$/i.test(path));
  const forms: NumberForm[] = [];
  if (!part) return forms;
  const codes = new Map<number, string>();
  let inside = false;
  await readXml(part, {
    opened: (name, attributes) => {
      if (name === 'numFmt') codes.set(Number(attributes['numFmtId']), attributes['formatCode'] ?? '');
      if (name === 'cellXfs') inside = true;
      if (name === 'xf' && inside) forms.push(formOf(attributes, codes));
    },
    closed: (name) => {
      if (name === 'cellXfs') inside = false;
    },
    text: () => undefined,
  });
  return forms;
}

function formOf(attributes: Attributes, codes: ReadonlyMap<number, string>): NumberForm {
  const id = Number(attributes['numFmtId'] ?? 0);
  return formOfNumber(id, codes.get(id));
}

/** Follows where text belongs to a cell: within <t>, but not within the phonetic runs that East Asian sheets add. */
export class RunText {
  private inText = false;
  private phonetic = false;

  get counts(): boolean {
    return this.inText && !this.phonetic;
  }

  opened(name: string): void {
    if (name === 't') this.inText = true;
    if (name === 'rPh') this.phonetic = true;
  }

  closed(name: string): void {
    if (name === 't') this.inText = false;
    if (name === 'rPh') this.phonetic = false;
  }
}

/** Workbooks write control characters as _x000D_. Halves of surrogate pairs stay as they are written. */
export function unescaped(text: string): string {
  return text.replace(/_x([0-9a-fA-F]{4})_/g, (written, hex: string) => {
    const code = Number.parseInt(hex, 16);
    return code >= 0xd800 && code <= 0xdfff ? written : String.fromCharCode(code);
  });
}

interface Target {
  readonly path: string;
  readonly type: string;
}

async function relationships(parts: readonly ArchivedFile[], path: string, folder = ''): Promise<ReadonlyMap<string, Target>> {
  const targets = new Map<string, Target>();
  const part = partAt(parts, path);
  if (!part) return targets;
  await readPart(part, MOST_SMALL_PART, (name, attributes) => {
    if (name !== 'Relationship' || attributes['TargetMode'] === 'External') return;
    const target = attributes['Target'] ?? '';
    targets.set(attributes['Id'] ?? '', {
      path: target.startsWith('/') ? target.slice(1) : normalized(folder + target),
      type: attributes['Type'] ?? '',
    });
  });
  return targets;
}

/** A path within the archive with its dots resolved; one that leaves the archive finds nothing there. */
function normalized(path: string): string {
  const steps: string[] = [];
  for (const step of path.split('/')) {
    if (step === '..') steps.pop();
    else if (step !== '.') steps.push(step);
  }
  return steps.join('/');
}

function relationId(attributes: Attributes): string {
  const key = Object.keys(attributes).find((name) => /(^|:)id$/.test(name));
  return key === undefined ? '' : (attributes[key] ?? '');
}

function partAt(parts: readonly ArchivedFile[], path: string): ArchivedFile | undefined {
  return parts.find((part) => part.path.toLowerCase() === path.toLowerCase());
}

async function readPart(part: ArchivedFile, mostBytes: number, opened: XmlReader['opened']): Promise<void> {
  if (part.bytes > mostBytes) throw new FileRefusal('XLSX_TOO_LARGE', { found: part.path, expected: megabytes(mostBytes) });
  await readXml(part, { opened, closed: () => undefined, text: () => undefined });
}

async function readXml(part: ArchivedFile, reader: XmlReader): Promise<void> {
  const events = new XmlEvents(reader);
  for await (const chunk of part.open()) events.push(chunk);
  events.end();
}
