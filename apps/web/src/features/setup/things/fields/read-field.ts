import type { Formats } from '../../../../i18n/formats.js';
import { typedNumber } from '../../../../i18n/numbers.js';
import type { QuantityKind } from '../../../../i18n/quantities.js';
import type { FieldKind, FieldSpec } from './field-spec.js';
import { minuteOfClock } from '../../../../page/values/minute-of-day.js';
import { partsOf } from './parts.js';

/** What is wrong with a field, as a message and its values. */
export interface Wrong {
  readonly key: string;
  readonly why: 'missing' | 'noNumber' | 'notWhole' | 'notTwelve' | 'noClock';
  readonly found: string;
}

type Read = { readonly value: unknown } | { readonly why: Wrong['why'] };
type Kind<Is extends FieldKind['is']> = Extract<FieldKind, { readonly is: Is }>;
type Reader<Is extends FieldKind['is']> = (text: string, kind: Kind<Is>, formats: Formats) => Read;

const numberOr = (value: number | null): Read => (value === null ? { why: 'noNumber' } : { value });
const asTyped = (text: string): Read => ({ value: text });

function twelve(formats: Formats, of: QuantityKind | 'number', text: string): Read {
  const typed = partsOf(text);
  if (typed.every((part) => part.trim() === '')) return { value: null };
  const parts = typed.map((part) => (of === 'number' ? typedNumber(part) : formats.typed(of, part)));
  return parts.length === 12 && parts.every((part) => part !== null) ? { value: parts } : { why: 'notTwelve' };
}

const readers: { readonly [Is in FieldKind['is']]: Reader<Is> } = {
  text: asTyped,
  lines: asTyped,
  date: asTyped,
  time: asTyped,
  word: asTyped,
  thing: asTyped,
  number: (text) => numberOr(typedNumber(text)),
  whole: (text) => {
    const value = typedNumber(text);
    return value !== null && !Number.isInteger(value) ? { why: 'notWhole' } : numberOr(value);
  },
  quantity: (text, { of }, formats) => numberOr(formats.typed(of, text)),
  twelve: (text, { of }, formats) => twelve(formats, of, text),
  yesNo: (text) => ({ value: text === 'yes' }),
  tick: (text) => ({ value: text === 'yes' }),
  emails: (text) => ({ value: text.split(/[\s,;]+/).filter(Boolean) }),
  things: (text) => ({ value: partsOf(text) }),
  words: (text) => ({ value: partsOf(text).join(', ') }),
  weekdays: (text) => ({ value: partsOf(text).map(Number) }),
  clock: (text) => {
    const value = minuteOfClock(text);
    return value === null ? { why: 'noClock' } : { value };
  },
  list: (text) => ({ value: listOf(text) }),
};

/** Kinds whose nothing is an empty list. */
const LISTS: ReadonlySet<FieldKind['is']> = new Set(['emails', 'things', 'list', 'weekdays']);

/** What is typed with commas between. */
export const listOf = (text: string): readonly string[] =>
  text
    .split(',')
    .map((part) => part.trim())
    .filter(Boolean);

function readEmpty({ kind, isNeeded }: FieldSpec): Read {
  if (isNeeded) return { why: 'missing' };
  if (kind.is === 'tick') return { value: false };
  return { value: LISTS.has(kind.is) ? [] : null };
}

/** What a field's text means, or why it means nothing. */
export function readField(formats: Formats, field: FieldSpec, text: string): Read {
  if (text === '') return readEmpty(field);
  const read = readers[field.kind.is] as Reader<FieldKind['is']>;
  return read(text, field.kind, formats);
}
