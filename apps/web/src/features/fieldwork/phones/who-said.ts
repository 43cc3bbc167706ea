import type { IntlShape } from 'react-intl';
import type { Formats } from '../../../i18n/formats.js';

/** One who said something: their name, the phone that they said it on and when, as far as that is known. */
interface Sayer {
  readonly by: string;
  readonly phone?: string | null;
  readonly savedAt?: string | null;
}

interface Words {
  readonly intl: IntlShape;
  readonly formats: Formats;
}

/** A name with the phone and the time, which alone tell two words of one person apart. */
export const sayerInWords = ({ intl, formats }: Words, { by, phone, savedAt }: Sayer): string =>
  intl.formatMessage({ id: 'phones.sayer' }, { by, phone: phone ?? 'none', when: savedAt ? formats.moment(savedAt) : 'none' });

const text = (value: unknown): string | null => (typeof value === 'string' ? value : null);

/** Who said the other of two words, by what the server told of it; null where it names nobody. */
export const otherSayer = (other: Readonly<Record<string, unknown>>) => ({
  by: text(other['by']) ?? text(other['changedBy']),
  phone: text(other['phone']),
  savedAt: text(other['savedAt']),
});

/** Whether one person said both, on two phones or on one. */
export const isOneSayer = (other: Readonly<Record<string, unknown>>): boolean => other['isSelf'] === true;

/** Who said the one and the other: with phone and time, and in short; of one person twice only the phone and the time tell the two apart. */
export function bothSayers(words: Words, sent: Sayer, other: Readonly<Record<string, unknown>>) {
  const told = otherSayer(other);
  const otherBy = told.by ?? words.intl.formatMessage({ id: 'phones.somebodyElse' });
  const long = { by: sayerInWords(words, sent), otherBy: sayerInWords(words, { ...told, by: otherBy }) };
  return { long, short: isOneSayer(other) || sent.by === otherBy ? long : { by: sent.by, otherBy } };
}
