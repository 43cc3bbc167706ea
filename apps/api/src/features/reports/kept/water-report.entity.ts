import { Column, Entity } from 'typeorm';
import { KeptRow } from '../../../platform/records/kept-row.js';

/** What a client gets for a month, a quarter or a year, of one property or of all. */
@Entity('water_report')
export class WaterReportRow extends KeptRow {
  @Column('uuid', { name: 'client_id' })
  clientId: string;

  /** null for all of the client's properties */
  @Column('uuid', { name: 'property_id', nullable: true })
  propertyId: string | null;

  @Column('date', { name: 'from_on' })
  fromOn: string;

  @Column('date', { name: 'until_on' })
  untilOn: string;

  @Column('text', { default: 'draft' })
  state: 'draft' | 'approved' | 'sent';

  @Column('text', { nullable: true })
  note: string | null;

  @Column('timestamptz', { name: 'approved_at', nullable: true })
  approvedAt: Date | null;

  @Column('uuid', { name: 'approved_by', nullable: true })
  approvedBy: string | null;

  /** not before this instant */
  @Column('timestamptz', { name: 'send_at', nullable: true })
  sendAt: Date | null;

  @Column('timestamptz', { name: 'sent_at', nullable: true })
  sentAt: Date | null;
}
