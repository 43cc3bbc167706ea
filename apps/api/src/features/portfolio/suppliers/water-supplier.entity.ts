import { Column, Entity } from 'typeorm';
import { KeptRow } from '../../../platform/records/kept-row.js';

/** Who sells the water, with its rules and rates. */
@Entity('water_supplier')
export class WaterSupplierRow extends KeptRow {
  @Column('text')
  name: string;
}
