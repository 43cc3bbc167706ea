import { Column, Entity } from 'typeorm';
import { KeptRow } from '../../../platform/records/kept-row.js';

/** What a client gets for a month, a quarter or a year. */
@Entity('water_report')
export class WaterReportRow extends KeptRow {
  @Column('uuid', { name: 'client_id' })
  clientId: string;

  @Column('date', { name: 'from_on' })
  fromOn: string;

  @Column('date', { name: 'until_on' })
  untilOn: string;

  @Column('text', { default: 'draft' })
  state: 'draft' | 'sent';

  @Column('text', { nullable: true })
  note: string | null;

  @Column('timestamptz', { name: 'sent_at', nullable: true })
  sentAt: Date | null;
}
