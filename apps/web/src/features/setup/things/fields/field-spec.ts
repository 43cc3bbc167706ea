import type { QuantityKind } from '../../../../i18n/quantities.js';

/** How one field of a kept thing is typed. */
export type FieldKind =
  | { readonly is: 'text' | 'lines' | 'emails' | 'number' | 'whole' | 'date' | 'time' }
  /** Yes, no, or not said. */
  | { readonly is: 'yesNo' }
  /** A mark: yes or no. */
  | { readonly is: 'tick' }
  | { readonly is: 'quantity'; readonly of: QuantityKind }
  /** One of the words of the records; `family` finds it in the reader's language. */
  | { readonly is: 'word'; readonly family: string; readonly words: readonly string[] }
  /** Several of such words, kept as one text separated by commas. */
  | { readonly is: 'words'; readonly family: string; readonly words: readonly string[] }
  /** Another thing, by its id; the page gives the choices under the field's key. */
  | { readonly is: 'thing' }
  /** Several other things, by their ids. */
  | { readonly is: 'things' }
  /** Some of Monday 1 to Sunday 7. */
  | { readonly is: 'weekdays' }
  /** A time of day, kept as minutes since midnight. */
  | { readonly is: 'clock' }
  /** A few words of the office's own, typed with commas between them. */
  | { readonly is: 'list' }
  /** January to December. */
  | { readonly is: 'twelve'; readonly of: QuantityKind | 'number' };

export interface FieldSpec {
  /** The field's name in the contract; its label is the message `setup.field.<key>`. */
  readonly key: string;
  readonly kind: FieldKind;
  readonly isNeeded?: boolean;
}

export type Thing = Readonly<Record<string, unknown>> & { readonly id: string; readonly version: number };

/** What is typed: text in the person's units until it is saved. */
export type Draft = Readonly<Record<string, string>>;

export const text = (key: string, isNeeded = false): FieldSpec => ({ key, kind: { is: 'text' }, isNeeded });
export const number = (key: string, isNeeded = false): FieldSpec => ({ key, kind: { is: 'number' }, isNeeded });
export const whole = (key: string, isNeeded = false): FieldSpec => ({ key, kind: { is: 'whole' }, isNeeded });
export const quantity = (key: string, of: QuantityKind, isNeeded = false): FieldSpec => ({ key, kind: { is: 'quantity', of }, isNeeded });
export const word = (key: string, family: string, words: readonly string[], isNeeded = false): FieldSpec => ({
  key,
  kind: { is: 'word', family, words },
  isNeeded,
});
export const words = (key: string, family: string, list: readonly string[]): FieldSpec => ({
  key,
  kind: { is: 'words', family, words: list },
});
export const date = (key: string, isNeeded = false): FieldSpec => ({ key, kind: { is: 'date' }, isNeeded });
export const thing = (key: string, isNeeded = false): FieldSpec => ({ key, kind: { is: 'thing' }, isNeeded });
