import { Column, Entity } from 'typeorm';
import { KeptRow } from '../../../platform/records/kept-row.js';

/** Those who go together. */
@Entity('crew')
export class CrewRow extends KeptRow {
  @Column('text')
  name: string;

  /** what somebody of the crew is able to do, in the office's own words */
  @Column('text', { array: true, default: '{}' })
  skills: string[];

  /** where the crew's day starts and ends; null: wherever the first and last stop are */
  @Column('double precision', { name: 'start_latitude', nullable: true })
  startLatitude: number | null;

  @Column('double precision', { name: 'start_longitude', nullable: true })
  startLongitude: number | null;

  /** Monday 1 to Sunday 7 */
  @Column('integer', { name: 'working_days', array: true, default: '{1,2,3,4,5}' })
  workingDays: number[];

  @Column('integer', { name: 'day_starts_minute', default: 420 })
  dayStartsMinute: number;

  @Column('integer', { name: 'day_ends_minute', default: 930 })
  dayEndsMinute: number;

  @Column('integer', { name: 'break_minutes', default: 30 })
  breakMinutes: number;
}
