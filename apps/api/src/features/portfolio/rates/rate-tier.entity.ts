import { Column, Entity } from 'typeorm';
import { KeptRow } from '../../../platform/records/kept-row.js';

/** What water costs up to a volume. */
@Entity('rate_tier')
export class RateTierRow extends KeptRow {
  @Column('uuid', { name: 'supplier_id' })
  supplierId: string;

  @Column('date', { name: 'effective_from' })
  effectiveFrom: string;

  /** money a month */
  @Column('double precision', { nullable: true })
  fixed: number | null;

  @Column('integer')
  tier: number;

  @Column('double precision', { name: 'up_to', nullable: true })
  upTo: number | null;

  /** volume, or share of allowance */
  @Column('text', { name: 'up_to_is', nullable: true })
  upToIs: string | null;

  @Column('text')
  unit: string;

  /** money for the unit */
  @Column('double precision')
  price: number;
}
