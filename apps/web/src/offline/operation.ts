/** Draft: being written. Queued: saved on the phone. Sending: on its way. Sent: the server has it. Refused: it said why not. */
export type OperationState = 'queued' | 'sending' | 'sent' | 'refused';

/** What the server said of an operation. */
export interface Verdict {
  readonly verdict: string;
  readonly problem: { readonly code: string; readonly message: string } | null;
  /** what stood there before, or stands there instead, and whose it is */
  readonly other: unknown;
}

/** Where the picture of a photo is. */
export type PictureState = 'none' | 'here' | 'sent' | 'refused';

/** One thing that was saved on the phone. Its key is made when it is saved, and is the same in every attempt to send it. */
export interface Operation {
  readonly key: string;
  /** the place in the phone's own order */
  readonly seq: number;
  readonly kind: string;
  readonly payloadVersion: number;
  /** ISO 8601, by the organization's clock as far as the phone knew it */
  readonly savedAt: string;
  /** JSON, as it was saved: what is sent again is the same to the letter */
  readonly body: string;
  /** what it speaks of: said again before it was ever sent, it takes the place of what was said */
  readonly subject: string;
  /** what it is in the person's words: the reading of Meter 2 */
  readonly words: string;
  readonly state: OperationState;
  /** how often it was tried since it was saved or the person asked for it again */
  readonly tries: number;
  /** whether it ever left: from then on what is said is another operation */
  readonly hasLeft: boolean;
  readonly told: Verdict | null;
  readonly sentAt: string | null;
  readonly picture: PictureState;
  /** why the person does not send it again, or that they have seen what somebody else said, and when: it stays here as history */
  readonly setAside?: SetAside | undefined;
}

/** A refused thing that nobody sends again, or a disputed one that was looked at. */
export interface SetAside {
  /** empty where it was only looked at */
  readonly why: string;
  /** ISO 8601 */
  readonly at: string;
}

/** What is said when something is saved. */
export type Said = Pick<Operation, 'kind' | 'payloadVersion' | 'body' | 'subject' | 'words'> & { readonly hasPicture?: boolean };

/** The tries for one revision; then the phone stops and says so. */
export const MOST_TRIES = 3;

/** How long what was sent stays on the phone. [days] */
export const KEPT_DAYS = 30;
