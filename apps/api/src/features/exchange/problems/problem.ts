import type { sentencesEn } from './sentences.en.js';

/** What can be wrong with a file, a row or a cell of an import: one word per cause, in two languages of sentences. */
export type ProblemCode = keyof typeof sentencesEn;

/**
 * One thing that is wrong, as data. `line` is the line of the file on which the row begins (the row of a sheet),
 * null where the whole file is meant; `found` and `expected` are words of the file, neither English nor Spanish.
 */
export interface Problem {
  readonly file: string;
  readonly line: number | null;
  readonly column: string | null;
  readonly code: ProblemCode;
  readonly found: string;
  readonly expected: string;
  /** The other line that this one contradicts or repeats. */
  readonly otherLine: number | null;
}

/** The parts of a problem that its finder knows; the place is added by whoever reads the file. */
export interface ProblemParts {
  readonly column?: string | null;
  readonly found?: string;
  readonly expected?: string;
  readonly otherLine?: number | null;
}

const LONGEST_FOUND = 80;

/** Shortens what was found, so that a hostile cell of a megabyte does not fill a report. */
export function excerpt(text: string): string {
  return text.length <= LONGEST_FOUND ? text : `${text.slice(0, LONGEST_FOUND)}…`;
}

/** Makes a problem from its place and its parts. */
export function problemAt(
  place: { readonly file: string; readonly line: number | null },
  code: ProblemCode,
  parts: ProblemParts = {},
): Problem {
  return {
    file: place.file,
    line: place.line,
    column: parts.column ?? null,
    code,
    found: excerpt(parts.found ?? ''),
    expected: parts.expected ?? '',
    otherLine: parts.otherLine ?? null,
  };
}
