import { platformProblems } from '../../../platform/problems/platform.problems.js';

const MOST_LETTERS = 4000;

/** What was written, without the space around it; nothing, or a book, is refused. */
export function words(field: string, written: string): string {
  const text = written.trim();
  if (!text || text.length > MOST_LETTERS || text.includes('\u0000'))
    throw platformProblems.valueRefused({ field, found: text.slice(0, 40), expected: `1 to ${MOST_LETTERS} letters` });
  return text;
}
