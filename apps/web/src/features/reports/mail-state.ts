/** A mail as far as its state goes. */
export interface StatedMail {
  readonly state: string;
  readonly answer?: string | null;
}

/** How a mail stands: what lies in the outbox folder, where no mail server is set, has not been sent to anybody. */
export const stateOfMail = ({ state, answer }: StatedMail): string =>
  state === 'sent' && answer?.startsWith('in-outbox: ') ? 'written' : state;

/** Whether a report lies in the outbox folder and was sent to nobody. */
export const isOnlyWritten = (mails: readonly StatedMail[]): boolean =>
  mails.some((mail) => stateOfMail(mail) === 'written') && !mails.some((mail) => stateOfMail(mail) === 'sent');
