import { Column, Entity } from 'typeorm';
import { OrganizationRow } from '../../../../platform/records/kept-row.js';

/** A phone's arrival at a stop. Its id is the name by which that phone speaks of the visit, whoever began it. */
@Entity('arrival')
export class ArrivalRow extends OrganizationRow {
  @Column('uuid', { name: 'visit_id' })
  visitId: string;

  @Column('uuid', { name: 'person_id', nullable: true })
  personId: string | null;

  @Column('timestamptz', { name: 'arrived_at' })
  arrivedAt: Date;

  /** when the phone took it back: it was not there */
  @Column('timestamptz', { name: 'withdrawn_at', nullable: true })
  withdrawnAt: Date | null;
}
