import { Column, Entity } from 'typeorm';
import { KeptRow } from '../../../platform/records/kept-row.js';

/** One property in a crew's day. */
@Entity('stop')
export class StopRow extends KeptRow {
  @Column('uuid', { name: 'route_id' })
  routeId: string;

  @Column('uuid', { name: 'property_id' })
  propertyId: string;

  /** from 1, in the order of the day */
  @Column('integer')
  position: number;

  /** stays on its day when the month is planned again */
  @Column('boolean', { default: false })
  locked: boolean;
}
