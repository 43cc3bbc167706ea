import type { IntlShape } from 'react-intl';
import type { Formats } from '../../../i18n/formats.js';
import { NOT_KNOWN } from '../../../i18n/numbers.js';
import { messageOf, wordOf } from '../../../says/saying.js';

type Fields = Readonly<Record<string, unknown>>;

/** One thing that two people said, as each said it. */
export interface SaidLine {
  readonly field: string;
  readonly label: string;
  readonly sent: string;
  readonly other: string;
}

interface Words {
  readonly intl: IntlShape;
  readonly formats: Formats;
}

/** What is shown of each kind, in this order. What is not named here is shown as it came. */
const FIELDS: Readonly<Record<string, readonly string[]>> = {
  'note-zone': ['count', 'word', 'repaired'],
  'close-visit': ['closedAt', 'doneNote', 'leftNote', 'workedMinutes'],
  reading: ['register', 'readAt', 'note'],
  settings: ['record', 'state', 'effectiveAt', 'programs'],
  'end-order': ['done', 'note', 'state'],
};

const INSTANTS: ReadonlySet<string> = new Set(['closedAt', 'readAt', 'effectiveAt']);

/** The fields of a body; none where it is broken. */
export function fieldsOf(body: string): Fields {
  try {
    const value: unknown = JSON.parse(body);
    return typeof value === 'object' && value !== null ? (value as Fields) : {};
  } catch (problem) {
    if (problem instanceof SyntaxError) return {};
    throw problem;
  }
}

/** Programs on one line each: A, Mon Wed, 05:00: 1 8 min, 2 12 min. */
function programsInWords({ intl, formats }: Words, value: readonly unknown[]): string {
  const programs = value as readonly {
    readonly name: string;
    readonly days: string;
    readonly starts: readonly string[];
    readonly stations: readonly { readonly station: number; readonly minutes: number }[];
  }[];
  return programs
    .map(({ name, days, starts, stations }) =>
      intl.formatMessage(
        { id: 'phones.program' },
        {
          name,
          days,
          starts: starts.join(' '),
          stations: stations.map(({ station, minutes }) => `${station}: ${formats.minutes(minutes)}`).join(', '),
        },
      ),
    )
    .join('; ');
}

function inWords(words: Words, field: string, value: unknown): string {
  const { intl, formats } = words;
  if (value === null || value === undefined || value === '') return NOT_KNOWN;
  if (typeof value === 'boolean') return intl.formatMessage({ id: value ? 'setup.yes' : 'setup.no' });
  if (typeof value === 'number') return formats.number(value, 3);
  if (Array.isArray(value)) return programsInWords(words, value) || NOT_KNOWN;
  if (INSTANTS.has(field)) return formats.moment(String(value));
  return wordOf(intl, `phones.word.${field}`, String(value));
}

/** The fields in which two words differ, as a person reads them. */
export function saidLines(words: Words, kind: string, sent: Fields, other: Fields): readonly SaidLine[] {
  return (FIELDS[kind] ?? []).flatMap((field) => {
    // A mark that was not set is not sent.
    const saidFirst = typeof other[field] === 'boolean' ? (sent[field] ?? false) : sent[field];
    const line = { sent: inWords(words, field, saidFirst), other: inWords(words, field, other[field]) };
    const isSame = line.sent === line.other || !(field in other);
    return isSame ? [] : [{ field, label: messageOf(words, `phones.field.${field}`) ?? field, ...line }];
  });
}
