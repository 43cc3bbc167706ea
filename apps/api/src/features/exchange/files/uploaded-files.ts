import { open } from 'node:fs/promises';
import path from 'node:path';
import { type Problem, problemAt } from '../problems/problem.js';
import { csvTable } from './csv-table.js';
import { diskFile } from './folder-files.js';
import { FileRefusal, type ImportSource, type TableFile } from './table-file.js';
import { xlsxTable } from './xlsx-table.js';
import { zipArchive } from './zip-archive.js';

/** A file as the browser named it, and where its bytes were put. */
export interface UploadedFile {
  readonly name: string;
  readonly path: string;
}

/** What was uploaded: CSV files, workbooks, archives of CSV files, told apart by their first bytes before their names. */
export async function uploadedFiles(uploads: readonly UploadedFile[]): Promise<ImportSource> {
  const tables: TableFile[] = [];
  const refused: Problem[] = [];
  for (const upload of uploads) {
    const name = baseName(upload.name);
    try {
      const found = await tablesOf(name, upload.path);
      tables.push(...found.tables);
      refused.push(...found.refused);
    } catch (error) {
      refused.push(refusalOf(name, error));
    }
  }
  return { tables, refused };
}

async function tablesOf(name: string, file: string): Promise<ImportSource> {
  const form = formOf(await firstBytes(file), name);
  if (form === 'ole') throw new FileRefusal('XLSX_OLD_OR_LOCKED');
  if (form === 'csv') return { tables: [csvTable(diskFile(name, file))], refused: [] };
  if (form === 'xlsx') return { tables: [await xlsxTable(name, file)], refused: [] };
  return zippedTables(file);
}

async function zippedTables(file: string): Promise<ImportSource> {
  const tables: TableFile[] = [];
  const refused: Problem[] = [];
  for (const entry of await zipArchive(file)) {
    const name = baseName(entry.path);
    if (name.startsWith('.') || entry.path.startsWith('__MACOSX/')) continue;
    if (/\.xlsx$/i.test(name)) refused.push(problemAt({ file: name, line: null }, 'XLSX_ONLY_BY_UPLOAD'));
    else tables.push(csvTable({ name, open: entry.open }));
  }
  return { tables, refused };
}

function refusalOf(name: string, error: unknown): Problem {
  if (error instanceof FileRefusal) return problemAt({ file: name, line: error.parts.line ?? null }, error.code, error.parts);
  if (error instanceof Error && 'code' in error)
    return problemAt({ file: name, line: null }, 'FILE_NOT_READABLE', { found: String(error.code) });
  throw error;
}

async function firstBytes(file: string): Promise<Buffer> {
  const handle = await open(file);
  try {
    const { buffer, bytesRead } = await handle.read(Buffer.alloc(8), 0, 8, 0);
    return buffer.subarray(0, bytesRead);
  } finally {
    await handle.close();
  }
}

function formOf(head: Buffer, name: string): 'csv' | 'zip' | 'xlsx' | 'ole' {
  if (head.toString('latin1', 0, 4) === '\xd0\xcf\x11\xe0') return 'ole';
  const zipped = head.toString('latin1', 0, 2) === 'PK' && (head[2] ?? 255) < 9;
  if (/\.xlsx$/i.test(name)) return 'xlsx';
  return zipped || /\.zip$/i.test(name) ? 'zip' : 'csv';
}

/** The name without any folders, whichever way the browser's machine writes them. */
function baseName(name: string): string {
  return path.posix.basename(name.replaceAll('\\', '/'));
}
