import type { IntlShape } from 'react-intl';
import type { Formats } from '../../../i18n/formats.js';
import { NOT_KNOWN } from '../../../i18n/numbers.js';
import { messageOf, wordOf } from '../../../says/saying.js';

type Fields = Readonly<Record<string, unknown>>;

/** One thing that a phone said. */
export interface SentLine {
  readonly field: string;
  readonly label: string;
  readonly sent: string;
}

/** One thing that two people said, as each said it. */
export interface SaidLine extends SentLine {
  readonly other: string;
}

interface Words {
  readonly intl: IntlShape;
  readonly formats: Formats;
}

/** What is shown of each kind, in this order. */
const FIELDS: Readonly<Record<string, readonly string[]>> = {
  arrive: ['arrivedAt'],
  'note-zone': ['kind', 'count', 'word', 'repaired'],
  photo: ['takenAt', 'word'],
  'close-visit': ['closedAt', 'doneNote', 'leftNote', 'workedMinutes', 'materials'],
  reading: ['register', 'readAt', 'note'],
  settings: ['record', 'state', 'effectiveAt', 'programs'],
  'end-order': ['done', 'note', 'state', 'day'],
  'flow-test': ['testedAt', 'minutes', 'registerBefore', 'registerAfter', 'word'],
  'catch-test': ['testedAt', 'minutes', 'catchesMl', 'word'],
};

/** Fields of a body that name things by ids; the heading names them in words. */
const NAMES = /Id$/;

const INSTANTS: ReadonlySet<string> = new Set(['arrivedAt', 'takenAt', 'closedAt', 'readAt', 'effectiveAt', 'testedAt']);

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

/** Lists on one line each: programs; what was used up; what each can caught. */
function listInWords(words: Words, field: string, value: readonly unknown[]): string {
  const { number } = words.formats;
  if (field === 'programs') return programsInWords(words, value);
  if (field === 'materials')
    return (value as readonly { readonly name: string; readonly count: number; readonly unit?: string | null }[])
      .map(({ name, count, unit }) => [number(count, 2), unit, name].filter(Boolean).join(' '))
      .join(', ');
  return value.map((one) => (typeof one === 'number' ? number(one, 1) : JSON.stringify(one))).join(', ');
}

function inWords(words: Words, field: string, value: unknown): string {
  const { intl, formats } = words;
  if (value === null || value === undefined || value === '') return NOT_KNOWN;
  if (typeof value === 'boolean') return intl.formatMessage({ id: value ? 'setup.yes' : 'setup.no' });
  if (typeof value === 'number') return formats.number(value, 3);
  if (Array.isArray(value)) return listInWords(words, field, value) || NOT_KNOWN;
  return typeof value === 'object' ? JSON.stringify(value) : textInWords(words, field, String(value));
}

function textInWords({ intl, formats }: Words, field: string, value: string): string {
  if (INSTANTS.has(field) && !Number.isNaN(Date.parse(value))) return formats.moment(value);
  if (field === 'day') return formats.dayInWords(value);
  return wordOf(intl, field === 'kind' ? 'field.seen' : `phones.word.${field}`, value);
}

const labelOf = (words: Words, field: string): string => messageOf(words, `phones.field.${field}`) ?? field;

/** What a phone said of an order is said of its state too, so that both words of it stand beside each other. */
const withState = (kind: string, sent: Fields): Fields =>
  kind === 'end-order' && typeof sent['done'] === 'boolean' ? { ...sent, state: sent['done'] ? 'done' : 'left' } : sent;

/** The fields in which two words differ, as a person reads them. */
export function saidLines(words: Words, kind: string, said: Fields, told: Fields): readonly SaidLine[] {
  const sent = withState(kind, said);
  // An order keeps the note of what was done under another name than the phone says it.
  const other: Fields = kind === 'end-order' && 'doneNote' in told ? { ...told, note: told['doneNote'] } : told;
  return (FIELDS[kind] ?? []).flatMap((field) => {
    // A mark that was not set is not sent.
    const saidFirst = typeof other[field] === 'boolean' ? (sent[field] ?? false) : sent[field];
    const line = { sent: inWords(words, field, saidFirst), other: inWords(words, field, other[field]) };
    const isSame = line.sent === line.other || !(field in other);
    return isSame ? [] : [{ field, label: labelOf(words, field), ...line }];
  });
}

/** All that a phone said, as a person reads it; what has no words here as it came, so that nothing of it is hidden. */
export function sentLines(words: Words, kind: string, sent: Fields): readonly SentLine[] {
  const known = FIELDS[kind] ?? [];
  const others = Object.keys(sent).filter((field) => !known.includes(field) && !NAMES.test(field));
  return [...known, ...others].flatMap((field) => {
    const value = sent[field] ?? null;
    return value === null || value === '' ? [] : [{ field, label: labelOf(words, field), sent: inWords(words, field, value) }];
  });
}
