import { Column, Entity } from 'typeorm';
import { OrganizationRow } from '../../../platform/records/kept-row.js';

/** What was used up at a visit. */
export interface Material {
  readonly name: string;
  readonly count: number;
  readonly unit: string | null;
}

/** What really happened at a stop. */
@Entity('visit')
export class VisitRow extends OrganizationRow {
  @Column('uuid', { name: 'property_id' })
  propertyId: string;

  @Column('uuid', { name: 'stop_id', nullable: true })
  stopId: string | null;

  @Column('uuid', { name: 'crew_id', nullable: true })
  crewId: string | null;

  @Column('timestamptz', { name: 'arrived_at' })
  arrivedAt: Date;

  @Column('timestamptz', { name: 'closed_at', nullable: true })
  closedAt: Date | null;

  @Column('text', { name: 'done_note', nullable: true })
  doneNote: string | null;

  @Column('text', { name: 'left_note', nullable: true })
  leftNote: string | null;

  @Column('uuid', { name: 'person_id', nullable: true })
  personId: string | null;

  /** the phone's own name for it: sent twice is the same as once */
  @Column('uuid', { name: 'device_record_id', nullable: true })
  deviceRecordId: string | null;

  /** who ended it last */
  @Column('uuid', { name: 'closed_by', nullable: true })
  closedBy: string | null;

  /** when an arrival by mistake was taken back: such a visit counts nowhere */
  @Column('timestamptz', { name: 'withdrawn_at', nullable: true })
  withdrawnAt: Date | null;

  @Column('uuid', { name: 'withdrawn_by', nullable: true })
  withdrawnBy: string | null;

  /** hands at work, all persons together; null where nobody counted */
  @Column('double precision', { name: 'worked_minutes', nullable: true })
  workedMinutes: number | null;

  @Column('jsonb', { default: [] })
  materials: readonly Material[];

  @Column('integer', { default: 1 })
  version: number;
}
