import { expect } from 'vitest';
import type { FileName } from '../../../apps/api/src/features/exchange/columns/import-files.js';
import { csvTable } from '../../../apps/api/src/features/exchange/files/csv-table.js';
import type { ImportSource } from '../../../apps/api/src/features/exchange/files/table-file.js';
import type { Known } from '../../../apps/api/src/features/exchange/drafts/known.js';
import type { Problem } from '../../../apps/api/src/features/exchange/problems/problem.js';
import { problemSentence } from '../../../apps/api/src/features/exchange/problems/problem-sentence.js';
import type { AcceptedRow, ImportedRow, ImportedValues, RejectedRow } from '../../../apps/api/src/features/exchange/rows/imported-row.js';
import { readImport } from '../../../apps/api/src/features/exchange/rows/read-import.js';

/** An organization with two properties: 'A' and 'M1' stand on both, so that their names alone say nothing. */
export const known: Known = {
  timeZone: 'America/Los_Angeles',
  clients: ['Elm HOA'],
  stations: ['S1'],
  suppliers: ['Town Water'],
  properties: [
    { property: 'Elm', timeZone: 'America/Los_Angeles' },
    { property: 'Oak', timeZone: 'America/Denver' },
  ],
  meters: [
    { property: 'Elm', meter: 'M1', unit: 'CCF' },
    { property: 'Oak', meter: 'M1', unit: 'gal' },
    { property: 'Oak', meter: 'M2', unit: 'kgal' },
  ],
  controllers: [
    {
      property: 'Elm',
      controller: 'A',
      stations: 12,
      startsPerProgram: 4,
      maxMinutes: 90,
      maxAdjustPercent: 200,
      adjustScope: 'controller',
    },
    {
      property: 'Oak',
      controller: 'A',
      stations: 6,
      startsPerProgram: null,
      maxMinutes: null,
      maxAdjustPercent: null,
      adjustScope: 'program',
    },
    { property: 'Oak', controller: 'B', stations: 6, startsPerProgram: null, maxMinutes: null, maxAdjustPercent: null, adjustScope: null },
  ],
  zones: [{ property: 'Elm', zone: 'Lawn' }],
};

/** Files by name, as text or bytes, handed over in pieces of a given size so that every boundary falls within something. */
export function inMemory(files: Readonly<Record<string, string | Buffer>>, piece = 65_536): ImportSource {
  const tables = Object.entries(files).map(([name, content]) => {
    const bytes = typeof content === 'string' ? Buffer.from(content) : content;
    return csvTable({ name, open: () => pieces(bytes, piece) });
  });
  return { tables, refused: [] };
}

async function* pieces(bytes: Buffer, size: number): AsyncGenerator<Buffer> {
  for (let at = 0; at < bytes.length; at += size) yield bytes.subarray(at, at + size);
}

/** Everything that an import said. */
export interface Outcome {
  /** `file:line:column CODE`, and `&line` where a second line is named; refusals, rejected rows and ignored files, in order. */
  readonly problems: readonly string[];
  /** The same for warnings and ignored columns. */
  readonly warnings: readonly string[];
  readonly accepted: { readonly [File in FileName]?: readonly AcceptedRow<File>[] };
  readonly rejected: Readonly<Record<string, readonly RejectedRow[]>>;
  readonly values: { readonly [File in FileName]?: readonly ImportedValues[File][] };
}

/** Runs an import to its end and checks that each of its problems makes a whole sentence in both languages. */
export async function outcomeOf(source: ImportSource, organization: Known = known): Promise<Outcome> {
  const said: Said = { problems: [], warnings: [], accepted: {}, rejected: {} };
  for await (const file of readImport(source, organization)) {
    if (file.status !== 'read') {
      said.problems.push(...file.problems.map(brief));
      continue;
    }
    said.warnings.push(...file.notices.map(brief));
    for await (const batch of file.batches()) batch.forEach((row) => note(said, file.file, row));
  }
  const values = Object.fromEntries(Object.entries(said.accepted).map(([file, rows]) => [file, rows.map((row) => row.values)]));
  return { ...said, values } as Outcome;
}

interface Said {
  readonly problems: string[];
  readonly warnings: string[];
  readonly accepted: Record<string, AcceptedRow[]>;
  readonly rejected: Record<string, RejectedRow[]>;
}

function note(said: Said, file: FileName, row: ImportedRow): void {
  said.warnings.push(...row.warnings.map(brief));
  if (row.verdict === 'accepted') {
    (said.accepted[file] ??= []).push(row);
    return;
  }
  said.problems.push(...row.problems.map(brief));
  (said.rejected[file] ??= []).push(row);
}

function brief(problem: Problem): string {
  for (const language of ['en', 'es'] as const) {
    const sentence = problemSentence(problem, language);
    expect(sentence).not.toMatch(/\{(found|expected|column|other|file)\}/);
    expect(sentence.startsWith(`${problem.file}`)).toBe(true);
  }
  // What is damaged is told in words for who uploads, not in those of the parser.
  if (problem.code.endsWith('_DAMAGED')) expect(problem.found).not.toMatch(/CRC|central directory|signature|tag|\.xml|UTF|depth|document/i);
  const other = problem.otherLine === null ? '' : ` &${problem.otherLine}`;
  return `${problem.file}:${problem.line ?? ''}:${problem.column ?? ''} ${problem.code}${other}`;
}

/** The same from files by name. */
export function outcome(files: Readonly<Record<string, string | Buffer>>, organization: Known = known): Promise<Outcome> {
  return outcomeOf(inMemory(files), organization);
}
