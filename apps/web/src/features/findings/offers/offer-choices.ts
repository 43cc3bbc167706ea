import type { ControllerToEnter, OfferToEnter } from './offers-document.js';

/** What the crew is to enter; `nothing` where it only records what it finds. */
export type Wished = 'least change' | 'full program' | 'nothing';

/** What can be wished, what is wished where nobody has chosen, and the offer behind each. */
export interface OfferChoices {
  readonly offers: readonly { readonly wished: Wished; readonly offer: OfferToEnter | null }[];
  readonly first: Wished;
}

/** The offers of a plan that can be chosen from: the full program only where it is another one; nothing where nobody knows what is set. */
export function offerChoices({ plan, presentSettings }: ControllerToEnter): OfferChoices {
  const { leastChange, full } = { leastChange: null, full: null, ...plan };
  const offers = leastChange ? leastAndOther(leastChange, full ?? null) : onlyFull(full ?? null, presentSettings?.state === 'on');
  return { offers, first: offers[0]?.wished ?? 'nothing' };
}

const leastAndOther = (least: OfferToEnter, full: OfferToEnter | null): OfferChoices['offers'] => [
  { wished: 'least change', offer: least },
  ...(full?.kind === 'full' ? [{ wished: 'full program' as const, offer: full }] : []),
];

function onlyFull(full: OfferToEnter | null, isKnown: boolean): OfferChoices['offers'] {
  if (!full) return [];
  const whole = { wished: 'full program' as const, offer: full };
  return isKnown ? [whole] : [{ wished: 'nothing', offer: null }, whole];
}
