import type { english } from './messages/en/english.js';
import type { Language } from './numbers.js';

export type MessageId = keyof typeof english;

export type Messages = Readonly<Record<MessageId, string>>;

/** Each language is a file of its own: a phone that speaks one of them reads no word of the other. */
const FILES: Readonly<Record<Language, () => Promise<Messages>>> = {
  en: async () => (await import('./messages/en/english.js')).english,
  es: async () => (await import('./messages/es/spanish.js')).spanish,
};

const fetched = new Map<Language, Messages>();
const underWay = new Map<Language, Promise<Messages>>();

/** Fetches every message of one language; asked again while it comes, it is the same promise. What did not come is fetched anew. */
export function fetchCatalogue(language: Language): Promise<Messages> {
  const known = underWay.get(language);
  if (known) return known;
  const coming = FILES[language]().then(
    (messages) => {
      fetched.set(language, messages);
      return messages;
    },
    (problem: unknown) => {
      underWay.delete(language);
      throw problem;
    },
  );
  underWay.set(language, coming);
  return coming;
}

/** Every message of one language; null where it was not fetched yet. */
export const catalogueHere = (language: Language): Messages | null => fetched.get(language) ?? null;
