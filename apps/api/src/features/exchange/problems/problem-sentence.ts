import type { Problem } from './problem.js';
import { sentencesEn } from './sentences.en.js';
import { sentencesEs } from './sentences.es.js';

/** The languages in which an import can answer. */
export type ProblemLanguage = 'en' | 'es';

const sentences = { en: sentencesEn, es: sentencesEs };
const places = {
  en: { line: 'line', column: 'column' },
  es: { line: 'línea', column: 'columna' },
};
const PLACEHOLDER = /\{(found|expected|column|other|file)\}/g;

/** The problem in words, without its place: what was found and what to do. For a cell beside the row itself. */
export function problemWords(problem: Problem, language: ProblemLanguage): string {
  const parts: Record<string, string> = {
    found: oneLine(problem.found),
    expected: problem.expected,
    column: problem.column ?? '',
    other: problem.otherLine === null ? '?' : String(problem.otherLine),
    file: problem.file,
  };
  return sentences[language][problem.code].replace(PLACEHOLDER, (_, name: string) => parts[name] ?? '');
}

/** The whole sentence: file, line, column, what was found, what to do. */
export function problemSentence(problem: Problem, language: ProblemLanguage): string {
  const words = places[language];
  const place = [
    problem.file,
    problem.line === null ? null : `${words.line} ${problem.line}`,
    problem.column === null ? null : `${words.column} ${oneLine(problem.column)}`,
  ];
  return `${place.filter((part) => part !== null).join(', ')}: ${problemWords(problem, language)}`;
}

/** A cell may hold line breaks and marks that turn the text around; a sentence may not. */
function oneLine(text: string): string {
  return text.replace(/[\p{Cc}\p{Zl}\p{Zp}\u061c\u200b-\u200f\u202a-\u202e\u2066-\u2069\ufeff]/gu, '␣');
}
