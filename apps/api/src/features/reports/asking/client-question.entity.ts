import { Column, Entity } from 'typeorm';
import { OrganizationRow } from '../../../platform/records/kept-row.js';

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
}
