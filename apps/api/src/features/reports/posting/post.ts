/** How a try to deliver ended. */
export interface Delivery {
  readonly kind: 'sent' | 'refused' | 'again' | 'unknown';
  /** what the server said, or what went wrong */
  readonly answer: string;
}

/** What the mail library tells of a failure. */
export interface MailFailure {
  readonly responseCode?: number;
  /** the step of the session that failed, such as RCPT TO */
  readonly command?: string;
  readonly response?: string;
  readonly message?: string;
}

/** Of what is kept of an answer. */
export const MOST_LETTERS = 400;
/** After this many tries an address is given up. */
export const MOST_TRIES = 30;
const FIRST_WAIT_MINUTES = 5;
const LONGEST_WAIT_MINUTES = 240;
/** The steps in which a server speaks of the recipient or of the mail; what it says before them is about this server and its settings. */
const OF_THE_MAIL: ReadonlySet<string> = new Set(['RCPT TO', 'DATA']);
/** 530, 534, 535 and 538 ask this server to prove itself, in whatever step (RFC 4954, section 6; from memory). */
const OF_THE_SENDER: ReadonlySet<number> = new Set([530, 534, 535, 538]);

const isNo = (code: number, step: string): boolean => code >= 500 && OF_THE_MAIL.has(step) && !OF_THE_SENDER.has(code);

/**
 * What a failure means. A 5xx to the recipient or the mail is no; a 5xx before that is a fault of this server's settings, which is mended and tried
 * again, as is a 4xx. Without a code nothing was handed over, unless the message itself was under way: then nobody knows.
 */
export function deliveryOf({ responseCode, response, message, command }: MailFailure, isHandedOver: boolean): Delivery {
  const answer = (response ?? message ?? 'no reason given').slice(0, MOST_LETTERS);
  if (isNo(responseCode ?? 0, command ?? '')) return { kind: 'refused', answer };
  if (responseCode !== undefined && responseCode >= 400) return { kind: 'again', answer };
  return { kind: isHandedOver ? 'unknown' : 'again', answer };
}

/** When to try again: after 5, 10, 20, 40, 80, 160 minutes, then every 4 hours: for 4 days in all (RFC 5321, section 4.5.4.1, asks for 4 to 5; from memory). */
export const nextTry = (attempts: number, now: Date): Date =>
  new Date(now.getTime() + 60_000 * Math.min(LONGEST_WAIT_MINUTES, FIRST_WAIT_MINUTES * 2 ** Math.max(0, attempts - 1)));
