import type { VolumeUnit } from '@rillbook/units/volume.js';
import { Column, Entity } from 'typeorm';
import { OrganizationRow } from '../../../platform/records/kept-row.js';

/** What a supplier billed for a meter: a volume between two days. */
@Entity('bill')
export class BillRow extends OrganizationRow {
  @Column('uuid', { name: 'meter_id' })
  meterId: string;

  @Column('date', { name: 'start_on' })
  startOn: string;

  /** the first day that is not billed */
  @Column('date', { name: 'end_on' })
  endOn: string;

  /** as typed; never multiplied [unit] */
  @Column('double precision')
  volume: number;

  @Column('text')
  unit: VolumeUnit;

  @Column('double precision')
  litres: number;

  /** [money] */
  @Column('double precision', { nullable: true })
  amount: number | null;

  /** the cells as they were typed in an imported file, by column name */
  @Column('jsonb', { default: {} })
  typed: Record<string, string>;
}
