import { Column, Entity } from 'typeorm';
import { OrganizationRow } from '../../../platform/records/kept-row.js';

/** Where the mail with an answer is; as of a report's, `sending` is written before a word is said to the server. */
export type AnswerMailState = 'queued' | 'sending' | 'sent' | 'refused' | 'unknown';

/** What a client asks the office, and the answer. */
@Entity('client_question')
export class ClientQuestionRow extends OrganizationRow {
  @Column('uuid', { name: 'client_id' })
  clientId: string;

  @Column('uuid', { name: 'property_id', nullable: true })
  propertyId: string | null;

  @Column('uuid', { name: 'report_id', nullable: true })
  reportId: string | null;

  @Column('text')
  question: string;

  @Column('uuid', { name: 'asked_by', nullable: true })
  askedBy: string | null;

  @Column('timestamptz', { name: 'asked_at', default: () => 'now()' })
  askedAt: Date;

  @Column('text', { nullable: true })
  answer: string | null;

  @Column('uuid', { name: 'answered_by', nullable: true })
  answeredBy: string | null;

  @Column('timestamptz', { name: 'answered_at', nullable: true })
  answeredAt: Date | null;

  /** the link by which it was asked; null where a member asked */
  @Column('uuid', { name: 'share_link_id', nullable: true })
  shareLinkId: string | null;

  /** where the answer goes; null where whoever asked left no address */
  @Column('text', { nullable: true })
  email: string | null;

  /** of whoever asked */
  @Column('text', { default: 'en' })
  language: 'en' | 'es';

  /** put away without an answer */
  @Column('timestamptz', { name: 'dismissed_at', nullable: true })
  dismissedAt: Date | null;

  @Column('uuid', { name: 'dismissed_by', nullable: true })
  dismissedBy: string | null;

  /** of the mail with the answer; null where none is to go */
  @Column('text', { name: 'mail_state', nullable: true })
  mailState: AnswerMailState | null;

  /** what the server said, or why nothing is known */
  @Column('text', { name: 'mail_answer', nullable: true })
  mailAnswer: string | null;

  @Column('integer', { name: 'mail_attempts', default: 0 })
  mailAttempts: number;
}
