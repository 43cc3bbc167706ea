import { In } from 'typeorm';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { MailStopRow } from './mail-stop.entity.js';

/** All SQL of addresses that want no more reports. */
export const mailStops = {
  /** Those of some addresses, in small letters. */
  of(tx: OrganizationTransaction, emails: readonly string[]): Promise<MailStopRow[]> {
    return tx.of(MailStopRow).findBy({ organizationId: tx.organizationId, email: In(emails.map((email) => email.toLowerCase())) });
  },

  /** The recipient asked to be mailed again. */
  async lift(tx: OrganizationTransaction, email: string): Promise<void> {
    await tx.of(MailStopRow).delete({ organizationId: tx.organizationId, email: email.toLowerCase() });
  },
};
