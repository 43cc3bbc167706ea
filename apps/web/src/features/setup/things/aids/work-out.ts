import { DomainError } from '@rillbook/units/domain-error.js';
import type { Formats } from '../../../../i18n/formats.js';
import type { Draft } from '../fields/field-spec.js';
import { readField, type Wrong } from '../fields/read-field.js';
import type { FieldAid } from './field-aids.js';

/** What an aid gives: a value as it is stored, what is wrong with a field, or why there is none. */
export type WorkedOut = { readonly value: number } | { readonly wrong: Wrong } | { readonly lacks: 'unfilled' | 'impossible' | 'none' };

/** Works out a field from what was typed for its aid. */
export function workOut(formats: Formats, aid: FieldAid, typed: Draft): WorkedOut {
  const values = new Map<string, unknown>();
  let isUnfilled = false;
  for (const spec of aid.fields) {
    const found = (typed[spec.key] ?? '').trim();
    const read = readField(formats, spec, found);
    if ('value' in read) values.set(spec.key, read.value);
    else if (read.why === 'missing') isUnfilled = true;
    else return { wrong: { key: spec.key, why: read.why, found } };
  }
  if (isUnfilled) return { lacks: 'unfilled' };
  const figure = (key: string): number | null => {
    const value = values.get(key);
    return typeof value === 'number' ? value : null;
  };
  try {
    const value = aid.answer({ figure, word: (key) => String(values.get(key)) });
    return value === null ? { lacks: 'none' } : { value };
  } catch (problem) {
    if (problem instanceof DomainError) return { lacks: 'impossible' };
    throw problem;
  }
}
