import { Column, Entity } from 'typeorm';
import { KeptRow } from '../../../platform/records/kept-row.js';
import type { VolumeUnit } from '@rillbook/units/volume.js';
import type { MeterKind, Water } from './meter-words.js';

/** Measures water into a property. */
@Entity('meter')
export class MeterRow extends KeptRow {
  @Column('uuid', { name: 'property_id' })
  propertyId: string;

  @Column('text')
  name: string;

  @Column('text', { default: 'irrigation' })
  kind: MeterKind;

  @Column('text', { default: 'potable' })
  water: Water;

  /** what the register counts in */
  @Column('text')
  unit: VolumeUnit;

  /** volume of a count of the register, in units [–] */
  @Column('double precision', { default: 1 })
  multiplier: number;

  /** after so many digits the register begins again at zero */
  @Column('integer', { nullable: true })
  digits: number | null;

  /** the least difference that the register shows [unit] */
  @Column('double precision', { nullable: true })
  resolution: number | null;

  @Column('double precision', { name: 'size_mm', nullable: true })
  sizeMm: number | null;

  @Column('double precision', { name: 'max_l_per_min', nullable: true })
  maxLPerMin: number | null;

  @Column('double precision', { name: 'pressure_kpa', nullable: true })
  pressureKpa: number | null;

  /** of a mixed meter */
  @Column('double precision', { name: 'indoor_l_per_day', nullable: true })
  indoorLPerDay: number | null;

  /** [money per unit] */
  @Column('double precision', { name: 'price_per_unit', nullable: true })
  pricePerUnit: number | null;

  @Column('date', { name: 'installed_on', nullable: true })
  installedOn: string | null;

  @Column('double precision', { name: 'first_register', nullable: true })
  firstRegister: number | null;

  @Column('date', { name: 'removed_on', nullable: true })
  removedOn: string | null;

  @Column('double precision', { name: 'last_register', nullable: true })
  lastRegister: number | null;
}
