import type { GivenGap } from '../report-input.js';

/**
 * What a difference is worth as it is written: its own money, in step with the litres that stand beside it.
 *
 * @param gap - Litres and money of a period. [L, money]
 * @param shownLitres - The difference as it is written. [L]
 * @returns The money; null where it is not known, or where months above and below at different prices turn its sign against the litres'. [money]
 */
export function moneyOf({ litres, money }: Pick<GivenGap, 'litres' | 'money'>, shownLitres: number | null): number | null {
  if (litres === null || money === null || shownLitres === null) return null;
  if (litres === 0) return money === 0 ? 0 : null;
  return money / litres < 0 ? null : (money * shownLitres) / litres;
}
