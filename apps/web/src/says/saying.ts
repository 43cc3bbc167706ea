import type { IntlShape } from 'react-intl';
import type { MessageId } from '../i18n/catalogue.js';
import type { Formats } from '../i18n/formats.js';
import { type Known, NOT_KNOWN } from '../i18n/numbers.js';
import type { Names } from './names.js';
import { roundVolume } from './round-volume.js';

/** What a sentence is made with: language, units, and the names of what it tells of. */
export interface Saying {
  readonly intl: IntlShape;
  readonly formats: Formats;
  readonly names: Names;
}

type Values = Readonly<Record<string, string | number>>;

/** A message whose id is made at run time; null where the catalogue has none. */
export function messageOf({ intl }: Pick<Saying, 'intl'>, id: string, values: Values = {}): string | null {
  return Object.hasOwn(intl.messages, id) ? intl.formatMessage({ id: id as MessageId }, values) : null;
}

/** A word of the records in the reader's language; a word that this version does not know stands as it is. */
export const wordOf = (intl: IntlShape, family: string, word: string): string => messageOf({ intl }, `${family}.${word}`) ?? word;

/** A volume with its unit, as exact as it deserves. */
export function aboutVolume(formats: Formats, litres: Known): string {
  if (typeof litres !== 'number') return NOT_KNOWN;
  const { fromLitres, unit, decimals } = formats.volumeColumn(litres);
  return `${formats.number(roundVolume(fromLitres(litres)), decimals)} ${unit}`;
}

/** What a volume is worth as it is written: as a report tells it, so that the same money stands on both. */
export function moneyAsWritten(formats: Formats, litres: number, money: number): number {
  const exact = formats.volumeColumn(litres).fromLitres(litres);
  return exact === 0 ? money : (money * roundVolume(exact)) / exact;
}

/** How a finding was ended, in the reader's language: the product's own words before the colon, a person's words after it as they stand. */
export function endedWords(intl: IntlShape, resolvedWith: string): string {
  const [own = '', ...theirs] = resolvedWith.split(': ');
  return [wordOf(intl, 'ended', own), ...theirs].join(': ');
}
