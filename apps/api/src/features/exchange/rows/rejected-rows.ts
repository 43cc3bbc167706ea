import { type ProblemLanguage, problemWords } from '../problems/problem-sentence.js';
import type { Problem } from '../problems/problem.js';
import { plainKey } from '../columns/import-files.js';
import { csvLine, unguarded } from './csv-cell.js';
import type { RejectedRow } from './imported-row.js';
import { PROBLEM_COLUMN } from './read-header.js';

/**
 * Writes rejected rows as a file of the same columns as came in, and a column `problem` that says what to mend. The
 * mended file can be imported as it is: the problem column is not read, and is written anew where it was there before.
 *
 * @param header the header line as it came in
 */
export async function* rejectedCsv(
  header: readonly string[],
  rows: AsyncIterable<RejectedRow> | Iterable<RejectedRow>,
  language: ProblemLanguage,
): AsyncGenerator<string> {
  const kept = header.map((_, at) => at).filter((at) => plainKey(unguarded(header[at] ?? '')) !== PROBLEM_COLUMN);
  yield csvLine([...kept.map((at) => unguarded(header[at] ?? '')), PROBLEM_COLUMN]);
  for await (const { cells, problems } of rows) {
    const own = kept.map((at) => unguarded(cells[at] ?? ''));
    // Cells beyond the header stay at the row's end, where their owner will look for them.
    const beyond = cells.slice(header.length).map(unguarded);
    yield csvLine([...own, problems.map((problem) => inRow(problem, language)).join(' '), ...beyond]);
  }
}

function inRow(problem: Problem, language: ProblemLanguage): string {
  const words = problemWords(problem, language);
  return problem.column === null ? words : `${problem.column}: ${words}`;
}
