/** How a try to deliver ended. */
export interface Delivery {
  readonly kind: 'sent' | 'refused' | 'again' | 'unknown';
  /** what the server said, or what went wrong */
  readonly answer: string;
}

/** What the mail library tells of a failure. */
export interface MailFailure {
  readonly responseCode?: number;
  readonly response?: string;
  readonly message?: string;
}

const MOST_LETTERS = 400;
/** After this many tries an address is given up. */
export const MOST_TRIES = 6;
const FIRST_WAIT_MINUTES = 5;

/**
 * What a failure means. A code of the server is an answer: 5xx is no, 4xx is not now. Without one nothing was handed over, unless the message
 * itself was under way: then nobody knows.
 */
export function deliveryOf({ responseCode, response, message }: MailFailure, isHandedOver: boolean): Delivery {
  const answer = (response ?? message ?? 'no reason given').slice(0, MOST_LETTERS);
  if (responseCode !== undefined && responseCode >= 500) return { kind: 'refused', answer };
  if (responseCode !== undefined && responseCode >= 400) return { kind: 'again', answer };
  return { kind: isHandedOver ? 'unknown' : 'again', answer };
}

/** When to try again: after 5, 10, 20, 40, 80 minutes. */
export const nextTry = (attempts: number, now: Date): Date =>
  new Date(now.getTime() + FIRST_WAIT_MINUTES * 60_000 * 2 ** Math.max(0, attempts - 1));
