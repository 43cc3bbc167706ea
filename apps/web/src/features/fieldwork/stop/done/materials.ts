import { typedNumber } from '../../../../i18n/numbers.js';

/** A material as it is typed. */
export interface MaterialDraft {
  readonly name: string;
  readonly count: string;
  readonly unit?: string | null;
}

/** A comma that cannot part thousands, as some phones' keys have it for the decimal point: 1,5. */
const COMMA_FOR_POINT = /^(\d+),(\d{1,2})$/;

/** A number as people type it, 1,000 being a thousand; null where nothing is typed, undefined where it is no amount. */
export function amountOf(typed: string): number | null | undefined {
  const text = typed.trim();
  if (text === '') return null;
  const amount = typedNumber(text.replace(COMMA_FOR_POINT, '$1.$2'));
  return amount !== null && amount >= 0 ? amount : undefined;
}

const isNamed = ({ name }: MaterialDraft): boolean => name.trim() !== '';

/** The first row whose count is no amount: it is asked again, never guessed. */
export const wrongMaterial = (drafts: readonly MaterialDraft[]): MaterialDraft | null =>
  drafts.find((one) => isNamed(one) && amountOf(one.count) === undefined) ?? null;

/** What was used: rows without a name are none, and without a count it was one. */
export const materialsOf = (drafts: readonly MaterialDraft[]) =>
  drafts.filter(isNamed).map(({ name, count, unit = null }) => ({ name: name.trim(), count: amountOf(count) ?? 1, unit }));

/** What was used, as it would be typed. */
export const draftsOf = (materials: readonly { readonly name: string; readonly count: number; readonly unit?: string | null }[]) =>
  materials.map(({ name, count, unit }): MaterialDraft => ({ name, count: String(count), unit: unit ?? null }));
