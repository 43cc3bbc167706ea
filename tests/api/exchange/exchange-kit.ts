import { ExportDeed } from '../../../apps/api/src/features/exchange/export/export-deed.service.js';
import type { ImportSource } from '../../../apps/api/src/features/exchange/files/table-file.js';
import { ImportDeed, type ImportWish } from '../../../apps/api/src/features/exchange/import/import-deed.service.js';
import type { ImportReport } from '../../../apps/api/src/features/exchange/import/import-report.js';
import { organizationActor } from '../../../apps/api/src/platform/database/actor.js';
import type { TestApp } from '../../support/test-app.js';
import { inMemory } from './imports-in-memory.js';

/** Files by name, as text. */
export type Files = Record<string, string>;

const OUTPUTS = ['accounts.csv', 'findings.csv'];

/** Imports files or a source into an organization. */
export function importInto(
  product: TestApp,
  organizationId: string,
  what: Files | ImportSource,
  rows: ImportWish['rows'] = 'all',
): Promise<ImportReport> {
  const source = 'tables' in what && Array.isArray(what.tables) ? (what as ImportSource) : inMemory(what as Files);
  return product.app.get(ImportDeed).run(organizationActor(organizationId, 'import'), source, { rows });
}

/** Everything that an organization exports. */
export async function exportOf(product: TestApp, organizationId: string): Promise<Files> {
  const files: Files = {};
  await product.app.get(ExportDeed).run(organizationActor(organizationId, 'job'), async ({ name, text }) => {
    files[name] = '';
    for await (const piece of text) files[name] += piece;
  });
  return files;
}

/** The files that can be imported again. */
export const inputsOf = (files: Files): Files => Object.fromEntries(Object.entries(files).filter(([name]) => !OUTPUTS.includes(name)));

/** What became of each file, as `new changed same wrong`. */
export const countsOf = (report: ImportReport): Record<string, string> =>
  Object.fromEntries(report.files.map((file) => [file.name, `${file.new} ${file.changed} ${file.same} ${file.wrong}`]));

/** The sums over all files. */
export function totalsOf({ files }: ImportReport): { new: number; changed: number; same: number; wrong: number } {
  const sum = (of: 'new' | 'changed' | 'same' | 'wrong'): number => files.reduce((total, file) => total + file[of], 0);
  return { new: sum('new'), changed: sum('changed'), same: sum('same'), wrong: sum('wrong') };
}
