import type { RecognizedFile } from '../drafts/laid-out-file.js';
import type { FileReport, ImportReport } from '../import/import-report.js';
import type { Problem } from '../problems/problem.js';
import { type ProblemLanguage, problemWords } from '../problems/problem-sentence.js';

/** One thing that is wrong or to be noted, with its sentence in the reader's language. */
export interface ShownProblem {
  readonly file: string;
  readonly line: number | null;
  readonly column: string | null;
  readonly code: string;
  readonly found: string;
  readonly expected: string;
  /** what was found and what to do, without the place */
  readonly says: string;
}

/** What a check found in one file. */
export interface ShownFile {
  readonly name: string;
  /** the kind of file, such as 'zones'; null where it is none */
  readonly file: string | null;
  /** how a file of a layout of its own is understood; null where it is a file of the import */
  readonly recognized: RecognizedFile | null;
  /** the name by which its refused rows are asked for; null where it gives none */
  readonly rejectedAs: string | null;
  readonly status: 'read' | 'refused';
  readonly new: number;
  readonly changed: number;
  readonly same: number;
  readonly wrong: number;
  readonly notices: readonly ShownProblem[];
  readonly problems: readonly ShownProblem[];
  readonly noticesTotal: number;
  readonly problemsTotal: number;
}

/** An upload that was checked, as the pages see it. */
export interface ShownImport {
  readonly id: string;
  readonly files: readonly ShownFile[];
  /** files that were left aside, each with why */
  readonly ignored: readonly { readonly name: string; readonly says: string }[];
  readonly problemsTotal: number;
  readonly rows: number;
}

export function showImport(id: string, report: ImportReport, language: ProblemLanguage): ShownImport {
  return {
    id,
    files: report.files.map((file) => showFile(file, language)),
    ignored: report.ignored.map((problem) => ({ name: problem.file, says: problemWords(problem, language) })),
    problemsTotal: report.problemsTotal,
    rows: report.rows,
  };
}

function showFile(file: FileReport, language: ProblemLanguage): ShownFile {
  const show = ({ otherLine: _, ...problem }: Problem): ShownProblem => ({
    ...problem,
    says: problemWords({ ...problem, otherLine: _ }, language),
  });
  return { ...file, recognized: file.recognized ?? null, notices: file.notices.map(show), problems: file.problems.map(show) };
}
