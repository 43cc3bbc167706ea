import type { Language } from '../formats/numbers.js';
import { report as english, type ReportWord } from './en/report.js';
import { report as spanish } from './es/report.js';
import { fill } from './fill.js';

type Values = Readonly<Record<string, string | number>>;

/** The words of a report in one language. */
export interface ReportWords {
  readonly say: (word: ReportWord, values?: Values) => string;
  /** a word of a family that comes from the records; null where this version has none */
  readonly of: (family: 'found' | 'action' | 'kind' | 'state' | 'plants' | 'method', word: string) => string | null;
  readonly because: (code: string | null) => string;
  /** names of which it is one: 'Lawn or Beds' */
  readonly oneOf: (names: readonly string[]) => string;
}

export function reportWords(language: Language): ReportWords {
  const words = language === 'es' ? spanish : english;
  const known = (id: string): id is ReportWord => Object.hasOwn(words, id);
  return {
    say: (word, values = {}) => fill(words[word], values),
    of: (family, word) => {
      const id = `${family}.${word}`;
      return known(id) ? words[id] : null;
    },
    because: (code) => {
      const id = `reason.${code}`;
      return known(id) ? words[id] : words['reason.other'];
    },
    oneOf: (names) => new Intl.ListFormat(language, { type: 'disjunction' }).format(names),
  };
}
