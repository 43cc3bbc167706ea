import { Column, Entity } from 'typeorm';
import { KeptRow } from '../../../platform/records/kept-row.js';

/** Those who go together. */
@Entity('crew')
export class CrewRow extends KeptRow {
  @Column('text')
  name: string;
}
