import { createReadStream } from 'node:fs';
import { readdir, stat } from 'node:fs/promises';
import path from 'node:path';
import { problemAt } from '../problems/problem.js';
import { csvTable } from './csv-table.js';
import type { ImportSource, NamedFile } from './table-file.js';

/** The files of a folder, itself alone and not what lies in folders within it; hidden files are passed over. */
export async function folderFiles(folder: string): Promise<ImportSource> {
  let names: string[];
  try {
    const entries = await readdir(folder);
    names = entries.filter((name) => !name.startsWith('.')).sort();
  } catch {
    return { tables: [], refused: [problemAt({ file: path.basename(folder), line: null }, 'FOLDER_NOT_READABLE', { found: folder })] };
  }
  const tables = [];
  const refused = [];
  for (const name of names) {
    const file = path.join(folder, name);
    if (!(await stat(file)).isFile()) continue;
    if (/\.xlsx$/i.test(name)) refused.push(problemAt({ file: name, line: null }, 'XLSX_ONLY_BY_UPLOAD'));
    else tables.push(csvTable(diskFile(name, file)));
  }
  return { tables, refused };
}

/** A file on the disk under the name by which it is known to the office. */
export function diskFile(name: string, file: string): NamedFile {
  return { name, open: () => createReadStream(file) as AsyncIterable<Buffer> };
}
