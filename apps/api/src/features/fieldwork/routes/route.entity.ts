import { Column, Entity } from 'typeorm';
import { KeptRow } from '../../../platform/records/kept-row.js';

/** A crew's day. */
@Entity('route')
export class RouteRow extends KeptRow {
  @Column('uuid', { name: 'crew_id' })
  crewId: string;

  @Column('date')
  day: string;

  @Column('text', { nullable: true })
  note: string | null;
}
