import { createIntl } from 'react-intl';
import { describe, expect, it } from 'vitest';
import type { MessageId } from '../../../apps/web/src/i18n/catalogue.js';
import { catalogue } from '../support/catalogues.js';
import { type Language, localeOf } from '../../../apps/web/src/i18n/numbers.js';

const english = catalogue('en');
const spanish = catalogue('es');
const ids = Object.keys(english) as MessageId[];

/** Messages that are the same word in both languages: unit signs, letters, numbers alone. */
const SAME_IN_BOTH: RegExp = /^(unit\.|maps\.north$|parts\.error$|frame\.otherLanguage$)/;

/** Whole words that both languages share. */
const SAME_AS_ENGLISH: ReadonlySet<string> = new Set(['method.rotor', 'setup.no']);

type Values = Readonly<Record<string, unknown>>;

/** What goes wrong when a message is said with some values. */
function problemsOf(language: Language, id: MessageId, values: Values): string[] {
  const problems: string[] = [];
  const intl = createIntl({ locale: localeOf(language), messages: catalogue(language), onError: ({ message }) => problems.push(message) });
  intl.formatMessage({ id }, values as Record<string, string>);
  return problems;
}

/** The values a message asks for: those without which it cannot be said, in the singular or the plural. */
function asked(language: Language, id: MessageId): { names: string[]; problems: string[] } {
  const message = catalogue(language)[id];
  const candidates = [...new Set([...message.matchAll(/[{<]\s*(\w+)/g)].map(([, name]) => name ?? ''))];
  const isTag = (name: string): boolean => message.includes(`<${name}>`);
  const values = (count: number): Values =>
    Object.fromEntries(candidates.map((name) => [name, isTag(name) ? (words: string[]) => words.join('') : count]));
  const isNeeded = (name: string): boolean =>
    [1, 3].some(
      (count) => problemsOf(language, id, Object.fromEntries(Object.entries(values(count)).filter(([key]) => key !== name))).length > 0,
    );
  return { names: candidates.filter(isNeeded).sort(), problems: [1, 3].flatMap((count) => problemsOf(language, id, values(count))) };
}

describe('the message catalogue', () => {
  it('has every message in both languages', () => {
    expect(Object.keys(spanish).sort()).toEqual([...ids].sort());
    expect(ids.length).toBeGreaterThan(80);
  });

  it('leaves no message empty, and none English in Spanish but signs', () => {
    expect(ids.filter((id) => !english[id].trim() || !spanish[id].trim())).toEqual([]);
    const wordy = (message: string): boolean => /\p{L}{2,}/u.test(message.replace(/\{[^}]*\}/g, ''));
    const untranslated = ids.filter((id) => english[id] === spanish[id] && wordy(english[id]) && !SAME_IN_BOTH.test(id));
    expect(untranslated.filter((id) => !SAME_AS_ENGLISH.has(id))).toEqual([]);
    // The list holds nothing that is no longer the same.
    expect([...SAME_AS_ENGLISH].filter((id) => english[id as MessageId] !== spanish[id as MessageId])).toEqual([]);
  });

  it('can be said, and asks for the same values in both languages', () => {
    for (const id of ids) {
      const [here, there] = [asked('en', id), asked('es', id)];
      expect([...here.problems, ...there.problems]).toEqual([]);
      expect(there.names, id).toEqual(here.names);
    }
  });
});
