import type { VolumeUnit } from '@rillbook/units/volume.js';
import { Column, Entity, PrimaryColumn } from 'typeorm';

/** A local day of a meter's hourly or 15-minute feed: one row a day, its intervals in arrays of one length, in order of time. */
@Entity('usage_day')
export class UsageDayRow {
  @PrimaryColumn('uuid', { name: 'organization_id' })
  organizationId: string;

  @PrimaryColumn('uuid', { name: 'meter_id' })
  meterId: string;

  /** on the property's calendar */
  @PrimaryColumn('date')
  day: string;

  /** the instant at which that day begins */
  @Column('timestamptz', { name: 'day_start' })
  dayStart: Date;

  /** from the day's start: hours are always 3600 of them, however the clock is moved [s] */
  @Column('integer', { name: 'start_seconds', array: true })
  startSeconds: number[];

  /** an interval belongs to the day in which it starts [s] */
  @Column('integer', { name: 'length_seconds', array: true })
  lengthSeconds: number[];

  /** as typed [unit] */
  @Column('double precision', { array: true })
  volumes: number[];

  @Column('text')
  unit: VolumeUnit;

  @Column('double precision', { name: 'total_l' })
  totalL: number;

  /** the least flow of the day's hours; null where they do not cover the whole day */
  @Column('double precision', { name: 'least_l_per_min', nullable: true })
  leastLPerMin: number | null;
}
