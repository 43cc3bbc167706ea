import { Column, Entity } from 'typeorm';
import { OrganizationRow } from '../../../platform/records/kept-row.js';

/** What an organization plans programs by. */
@Entity('plan_setting')
export class PlanSettingRow extends OrganizationRow {
  @Column('integer', { default: 1 })
  version: number;

  /** local time HH:MM */
  @Column('text', { name: 'water_from' })
  waterFrom: string;

  @Column('text', { name: 'water_until' })
  waterUntil: string;

  /** price of a litre that plants go without [–] */
  @Column('double precision')
  thirst: number;

  /** price of a litre that does not reach roots [–] */
  @Column('double precision')
  waste: number;

  /** litres of waste that a key press is worth [L] */
  @Column('double precision', { name: 'key_press' })
  keyPress: number;

  /** litres of waste that a watering of one zone is worth [L] */
  @Column('double precision')
  watering: number;
}
