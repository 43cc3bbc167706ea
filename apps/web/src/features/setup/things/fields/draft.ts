import type { Formats } from '../../../../i18n/formats.js';
import { NOT_KNOWN } from '../../../../i18n/numbers.js';
import type { QuantityKind } from '../../../../i18n/quantities.js';
import type { Draft, FieldKind, FieldSpec, Thing } from './field-spec.js';
import { typedClock } from '../../../../page/values/minute-of-day.js';
import { joined } from './parts.js';
import { readField, type Wrong } from './read-field.js';

const MOST_DECIMALS = 6;

const shownNumber = (formats: Formats, of: QuantityKind | 'number', value: number): string => {
  const shown = of === 'number' ? formats.number(value, MOST_DECIMALS) : formats.figureOf(of, value);
  return shown === NOT_KNOWN ? '' : shown;
};

const shownFigure = (formats: Formats, kind: FieldKind, value: number): string =>
  kind.is === 'clock' ? typedClock(value) : shownNumber(formats, kind.is === 'quantity' ? kind.of : 'number', value);

function shownParts(formats: Formats, kind: FieldKind, parts: readonly unknown[]): string {
  if (kind.is === 'list') return parts.join(', ');
  const of = kind.is === 'twelve' ? kind.of : 'number';
  return joined(parts.map((part) => (typeof part === 'number' ? shownNumber(formats, of, part) : String(part))));
}

/** A value as it is typed in a field of its kind. */
export function shownValue(formats: Formats, kind: FieldKind, value: unknown): string {
  if (value === null || value === undefined) return '';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (Array.isArray(value)) return shownParts(formats, kind, value);
  if (kind.is === 'words') return joined(String(value).split(', '));
  return typeof value === 'number' ? shownFigure(formats, kind, value) : String(value);
}

/** A thing as it is typed; empty fields for a new one. */
export const draftOf = (formats: Formats, fields: readonly FieldSpec[], thing: Thing | null, fixed: Draft = {}): Draft =>
  Object.fromEntries(fields.map(({ key, kind }) => [key, thing ? shownValue(formats, kind, thing[key]) : (fixed[key] ?? '')]));

/** What is sent of a draft; what nobody touched is sent as it was kept, not as it was rounded for the screen. */
export function inputOf(
  formats: Formats,
  fields: readonly FieldSpec[],
  draft: Draft,
  before: Thing | null,
): { readonly input: Readonly<Record<string, unknown>>; readonly wrong: readonly Wrong[] } {
  const untouched = draftOf(formats, fields, before);
  const wrong: Wrong[] = [];
  const input: Record<string, unknown> = {};
  for (const field of fields) {
    const found = (draft[field.key] ?? '').trim();
    const isKept = before !== null && found === (untouched[field.key] ?? '').trim() && !(field.isNeeded && found === '');
    const read = isKept ? { value: before[field.key] } : readField(formats, field, found);
    if ('value' in read) input[field.key] = read.value;
    else wrong.push({ key: field.key, why: read.why, found });
  }
  return { input, wrong };
}

/** The fields in which two drafts differ. */
export const differing = (fields: readonly FieldSpec[], a: Draft, b: Draft): readonly FieldSpec[] =>
  fields.filter(({ key }) => (a[key] ?? '').trim() !== (b[key] ?? '').trim());
