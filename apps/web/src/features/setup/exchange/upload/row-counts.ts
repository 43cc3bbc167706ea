import type { CheckedFile, CheckedUpload } from './imports.js';
import { isQuestion } from './whose-file.js';

/** What an upload comes to: its rows, what is wrong with them, and the files that are not read before an answer. */
export interface RowCounts {
  readonly added: number;
  readonly changed: number;
  readonly same: number;
  readonly wrong: number;
  /** Rows that can be imported as they are. */
  readonly good: number;
  /** Files that wait for an answer; their rows are counted nowhere yet. */
  readonly waiting: number;
  /** What is wrong; a question is not. */
  readonly problems: number;
}

/** Whether a file waits for an answer, so that nothing is known of its rows. */
export function isWaiting({ problems }: CheckedFile): boolean {
  return problems.some(isQuestion);
}

/** The counts over all files of an upload. */
export function rowCounts({ files, problemsTotal }: CheckedUpload): RowCounts {
  const sum = (of: 'new' | 'changed' | 'same' | 'wrong'): number => files.reduce((total, file) => total + file[of], 0);
  const [added, changed, same] = [sum('new'), sum('changed'), sum('same')];
  return {
    added,
    changed,
    same,
    wrong: sum('wrong'),
    good: added + changed + same,
    waiting: new Set(files.filter(isWaiting).map(({ name }) => name)).size,
    problems: problemsTotal - files.flatMap((file) => file.problems).filter(isQuestion).length,
  };
}
