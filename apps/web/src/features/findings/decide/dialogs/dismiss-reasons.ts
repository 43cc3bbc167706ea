import type { MessageId } from '../../../../i18n/catalogue.js';

/** The reasons in the server's own words, with the words of the screen; what each teaches the detector stands in `silenced-by.ts`. */
export const DISMISS_REASONS = [
  { value: 'client wants it', words: 'dismiss.agreed', hint: 'dismiss.learns.more' },
  { value: 'hand watering known', words: 'dismiss.hand', hint: 'dismiss.learns.more' },
  { value: 'meter known to be off', words: 'dismiss.meter', hint: 'dismiss.learns.more' },
  { value: 'looked after', words: 'dismiss.known', hint: 'dismiss.learns.once' },
  { value: 'numbers are wrong', words: 'dismiss.wrong', hint: 'dismiss.learns.once' },
  { value: 'not worth the trip', words: 'dismiss.small', hint: 'dismiss.learns.more' },
  { value: 'not useful', words: 'dismiss.useless', hint: 'dismiss.learns.twice' },
  { value: 'other', words: 'dismiss.other', hint: 'dismiss.learns.once' },
] as const satisfies readonly { readonly value: string; readonly words: MessageId; readonly hint: MessageId }[];

export type DismissReason = (typeof DISMISS_REASONS)[number]['value'];
