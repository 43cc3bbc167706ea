import type { Columns, RowOf } from './column.js';
import { backflow, bills, pauses, rates, readings, rules, settings, usage, weather } from './history-columns.js';
import { clients, controllers, meters, plantings, properties, stations, zones } from './portfolio-columns.js';

/** Every file of the import folder, in the order in which they are read: a file names only things of files before it. */
export const importFiles = {
  clients,
  stations,
  properties,
  meters,
  controllers,
  zones,
  plantings,
  settings,
  pauses,
  readings,
  usage,
  bills,
  weather,
  rules,
  rates,
  backflow,
} satisfies Record<string, Columns>;

/** A file of the import folder, without its ending. */
export type FileName = keyof typeof importFiles;

/** The cells of a row in canonical form, by file. */
export type ReadValues = { readonly [File in FileName]: RowOf<(typeof importFiles)[File]> };

/** The names in reading order. */
export const fileNames = Object.keys(importFiles) as FileName[];

/** Files that the export writes beside the input files; they are computed and never imported. */
export const OUTPUT_FILES: readonly string[] = ['accounts', 'findings'];

/** A name of a file or a column as it is compared: without case, spaces and underscores. */
export function plainKey(text: string): string {
  return text.toLowerCase().replace(/[\s_]/g, '');
}

/** What a file is, by its name: one of the import, one of the outputs, or neither. */
export function recognizeFile(fileName: string): FileName | 'output' | null {
  const key = plainKey(fileName).replace(/\.(csv|tsv|txt|xlsx)$/, '');
  if (OUTPUT_FILES.includes(key)) return 'output';
  return fileNames.find((name) => name === key) ?? null;
}

/** The columns of a file by the way in which they are compared. */
export function columnsByKey(file: FileName): ReadonlyMap<string, string> {
  return new Map(Object.keys(importFiles[file]).map((column) => [plainKey(column), column]));
}
