import { Column, Entity } from 'typeorm';
import { KeptRow } from '../../../platform/records/kept-row.js';

/** Who pays: a homeowners' association, a school district, a household. */
@Entity('client')
export class ClientRow extends KeptRow {
  @Column('text')
  name: string;

  @Column('text', { array: true, default: [] })
  emails: string[];

  @Column('text', { nullable: true })
  language: 'en' | 'es' | null;

  @Column('text', { nullable: true })
  units: 'us' | 'metric' | null;

  /** the most that a repair may cost without asking [money] */
  @Column('double precision', { name: 'not_to_exceed', nullable: true })
  notToExceed: number | null;
}
