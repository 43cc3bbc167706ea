import { Column, Entity } from 'typeorm';
import { OrganizationRow } from '../../../platform/records/kept-row.js';

/** Where a reading comes from. */
export type ReadingSource = 'crew' | 'bill' | 'feed';

/** A meter's register at an instant. It is never overwritten: a correction is another row that this one names. */
@Entity('reading')
export class ReadingRow extends OrganizationRow {
  @Column('uuid', { name: 'meter_id' })
  meterId: string;

  @Column('timestamptz', { name: 'read_at' })
  readAt: Date;

  /** as it stands on the dial; a register is not a volume */
  @Column('double precision')
  register: number;

  @Column('text', { default: 'crew' })
  source: ReadingSource;

  @Column('text', { nullable: true })
  note: string | null;

  /** the name that the device gave it when it was saved there */
  @Column('uuid', { name: 'device_record_id', nullable: true })
  deviceRecordId: string | null;

  @Column('uuid', { name: 'replaced_by_id', nullable: true })
  replacedById: string | null;

  @Column('uuid', { name: 'person_id', nullable: true })
  personId: string | null;

  @Column('timestamptz', { name: 'recorded_at', default: () => 'now()' })
  recordedAt: Date;

  /** the cells as they were typed in an imported file, by column name */
  @Column('jsonb', { default: {} })
  typed: Record<string, string>;
}
