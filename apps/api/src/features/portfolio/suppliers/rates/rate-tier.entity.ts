import { Column, Entity } from 'typeorm';
import { KeptRow } from '../../../../platform/records/kept-row.js';
import type { VolumeUnit } from '@rillbook/units/volume.js';
import type { UpToIs } from './up-to-is.js';

/** What water costs up to a volume, from a date on. */
@Entity('rate_tier')
export class RateTierRow extends KeptRow {
  @Column('uuid', { name: 'supplier_id' })
  supplierId: string;

  @Column('date', { name: 'effective_from' })
  effectiveFrom: string;

  /** each month, whatever the volume [money] */
  @Column('double precision', { nullable: true })
  fixed: number | null;

  @Column('integer')
  tier: number;

  /** where the tier ends; the last has no end */
  @Column('double precision', { name: 'up_to', nullable: true })
  upTo: number | null;

  @Column('text', { name: 'up_to_is', nullable: true })
  upToIs: UpToIs | null;

  @Column('text')
  unit: VolumeUnit;

  /** [money per unit] */
  @Column('double precision')
  price: number;
}
