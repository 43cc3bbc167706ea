import { type Cell, Fault } from './column.js';

function plain(text: string): string {
  return text.toLowerCase().replace(/\s+/g, ' ').trim();
}

/** One of a list of words, whatever their case and the number of spaces within. */
export function oneOf<const Word extends string>(...words: readonly Word[]): Cell<Word> {
  const known = new Map(words.map((word) => [plain(word), word]));
  const expected = words.join(', ');
  return {
    read: (text) => known.get(plain(text)) ?? new Fault('NOT_ONE_OF', expected),
    write: (value) => value,
  };
}

/** Several of a list of words, separated by commas, semicolons or spaces; kept as one text, separated by commas. */
export function someOf(...words: readonly string[]): Cell<string> {
  const longestFirst = [...words].sort((a, b) => b.length - a.length);
  const expected = words.join(', ');
  return {
    read(text) {
      const found: string[] = [];
      let rest = plain(text.replace(/[,;]/g, ' '));
      while (rest !== '') {
        const word = longestFirst.find((candidate) => rest === candidate || rest.startsWith(`${candidate} `));
        if (word === undefined) return new Fault('NOT_ONE_OF', expected, rest);
        if (!found.includes(word)) found.push(word);
        rest = rest.slice(word.length).trim();
      }
      return found.join(', ');
    },
    write: (value) => value,
  };
}

/** Yes or no; a spreadsheet's true and false are the same. */
export const yesNo: Cell<boolean> = {
  read(text) {
    const word = plain(text);
    if (word === 'yes' || word === 'true') return true;
    return word === 'no' || word === 'false' ? false : new Fault('NOT_ONE_OF', 'yes, no');
  },
  write: (value) => (value ? 'yes' : 'no'),
};

const zones = new Map<string, string | null>();
const MOST_REMEMBERED = 1000;

/** A time zone by its IANA name. Abbreviations such as PST and bare offsets are refused: they do not know when clocks change. */
export const timeZone: Cell<string> = {
  read(text) {
    const remembered = zones.get(text);
    const canonical = remembered === undefined ? ianaName(text) : remembered;
    if (remembered === undefined && zones.size < MOST_REMEMBERED) zones.set(text, canonical);
    return canonical ?? new Fault('NOT_A_TIME_ZONE', 'America/Los_Angeles');
  },
  write: (value) => value,
};

function ianaName(text: string): string | null {
  if (!/^(?:[A-Za-z]+(?:\/[A-Za-z0-9_+-]+){1,2}|UTC)$/.test(text)) return null;
  try {
    const { timeZone: resolved } = new Intl.DateTimeFormat('en', { timeZone: text }).resolvedOptions();
    // A link such as US/Pacific resolves to its target; the office's own word is kept where only its case differs.
    return resolved.toLowerCase() === text.toLowerCase() ? resolved : text;
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}
