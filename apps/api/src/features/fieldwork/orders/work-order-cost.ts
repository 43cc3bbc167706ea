/** What a work order says of its cost. Money is in the organization's currency. */
export interface StatedCost {
  readonly labourHours: number | null;
  readonly labourRate: number | null;
  readonly parts: readonly { readonly count: number; readonly price: number }[];
}

// Hundredths, so that sums of prices compare as they are printed.
const toCents = (money: number): number => Math.round(money * 100) / 100;

/** The part of the cost that is known: labour with its rate, and the parts. */
export function leastCost({ labourHours, labourRate, parts }: StatedCost): number {
  return toCents((labourHours ?? 0) * (labourRate ?? 0) + parts.reduce((sum, { count, price }) => sum + count * price, 0));
}

/** The cost: labour hours x rate, and the parts; null when nothing is stated, or hours without a rate. */
export function costOf(stated: StatedCost): number | null {
  const { labourHours, labourRate, parts } = stated;
  const labour = labourHours !== null && labourRate !== null;
  if (labourHours !== null && labourRate === null) return null;
  return labour || parts.length ? leastCost(stated) : null;
}

/** Whether nothing is known of its cost: what waits so waits for an offer. */
export const isUnpriced = (stated: StatedCost): boolean => costOf(stated) === null && leastCost(stated) === 0;

/** Whether what is known of the cost already exceeds what the client lets be spent without asking. */
export const exceeds = (stated: StatedCost, notToExceed: number | null): notToExceed is number =>
  notToExceed !== null && leastCost(stated) > notToExceed;
