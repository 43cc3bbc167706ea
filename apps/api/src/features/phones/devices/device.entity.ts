import { Column, Entity } from 'typeorm';
import { OrganizationRow } from '../../../platform/records/kept-row.js';

/** A phone, as it was last heard of. */
@Entity('device')
export class DeviceRow extends OrganizationRow {
  @Column('uuid', { name: 'person_id', nullable: true })
  personId: string | null;

  @Column('text', { nullable: true })
  name: string | null;

  @Column('text', { name: 'app_version', nullable: true })
  appVersion: string | null;

  @Column('timestamptz', { name: 'heard_at' })
  heardAt: Date;

  @Column('integer')
  waiting: number;

  @Column('integer', { name: 'photos_waiting' })
  photosWaiting: number;

  @Column('integer')
  refused: number;

  @Column('timestamptz', { name: 'oldest_waiting_at', nullable: true })
  oldestWaitingAt: Date | null;
}
