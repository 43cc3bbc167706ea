import { Column, Entity } from 'typeorm';
import { OrganizationRow } from '../../../../platform/records/kept-row.js';

/** Where a mail is: `sending` is written before a word is said to the server, so that a lost answer is known as such. */
export type MailState = 'queued' | 'sending' | 'sent' | 'refused' | 'unknown' | 'bounced';

/** Whether a mail may have reached its recipient. */
export const mayBeOut = ({ state, mayHaveArrived }: Pick<ReportMailRow, 'state' | 'mayHaveArrived'>): boolean =>
  state === 'sent' || state === 'sending' || state === 'unknown' || mayHaveArrived;

/** One report to one recipient. */
@Entity('report_mail')
export class ReportMailRow extends OrganizationRow {
  @Column('uuid', { name: 'report_id' })
  reportId: string;

  @Column('text')
  recipient: string;

  @Column('text', { default: 'queued' })
  state: MailState;

  @Column('integer', { default: 0 })
  attempts: number;

  /** what the server said, or why nothing is known */
  @Column('text', { nullable: true })
  answer: string | null;

  /** of the secret by which the recipient wants no more */
  @Column('bytea', { name: 'stop_hash', nullable: true })
  stopHash: Buffer | null;

  /** of the secrets in mails of earlier tries: their links go on working */
  @Column('bytea', { name: 'former_stop_hashes', array: true, default: '{}' })
  formerStopHashes: Buffer[];

  /** it was unknown once, and nobody has said that it came back */
  @Column('boolean', { name: 'may_have_arrived', default: false })
  mayHaveArrived: boolean;

  @Column('timestamptz', { name: 'next_try_at', default: () => 'now()' })
  nextTryAt: Date;

  @Column('timestamptz', { name: 'tried_at', nullable: true })
  triedAt: Date | null;

  @Column('timestamptz', { name: 'sent_at', nullable: true })
  sentAt: Date | null;

  @Column('timestamptz', { name: 'created_at', default: () => 'now()' })
  createdAt: Date;
}
