import { Column, Entity } from 'typeorm';
import { KeptRow } from '../../../platform/records/kept-row.js';

/** A local restriction. */
@Entity('watering_rule')
export class WateringRuleRow extends KeptRow {
  @Column('uuid', { name: 'supplier_id' })
  supplierId: string;

  @Column('text')
  name: string;

  /** blank: any day; 'none': must not be watered */
  @Column('text', { name: 'allowed_days', nullable: true })
  allowedDays: string | null;

  @Column('integer', { name: 'days_per_week', nullable: true })
  daysPerWeek: number | null;

  /** odd or even */
  @Column('text', { name: 'address_parity', nullable: true })
  addressParity: string | null;

  /** HH:MM */
  @Column('text', { name: 'blocked_from', nullable: true })
  blockedFrom: string | null;

  /** HH:MM */
  @Column('text', { name: 'blocked_until', nullable: true })
  blockedUntil: string | null;

  /** [min] */
  @Column('double precision', { name: 'max_minutes', nullable: true })
  maxMinutes: number | null;

  /** [h] */
  @Column('double precision', { name: 'hours_after_rain', nullable: true })
  hoursAfterRain: number | null;

  /** [mm] */
  @Column('double precision', { name: 'rain_mm', nullable: true })
  rainMm: number | null;

  @Column('text', { nullable: true })
  plants: string | null;

  @Column('text', { name: 'exempt_methods', nullable: true })
  exemptMethods: string | null;

  @Column('text', { nullable: true })
  water: string | null;

  @Column('date', { name: 'effective_from', nullable: true })
  effectiveFrom: string | null;

  @Column('date', { name: 'effective_until', nullable: true })
  effectiveUntil: string | null;
}
