/** A material as it is typed. */
export interface MaterialDraft {
  readonly name: string;
  readonly count: string;
}

/** A number as people type it; null where nothing is typed, undefined where it is no amount. */
export function amountOf(typed: string): number | null | undefined {
  const text = typed.trim().replace(',', '.');
  if (text === '') return null;
  const amount = Number(text);
  return Number.isFinite(amount) && amount >= 0 ? amount : undefined;
}

/** What was used: rows without a name are none, and without a count it was one. */
export const materialsOf = (drafts: readonly MaterialDraft[]) =>
  drafts
    .filter(({ name }) => name.trim() !== '')
    .map(({ name, count }) => ({ name: name.trim(), count: amountOf(count) ?? 1, unit: null }));
