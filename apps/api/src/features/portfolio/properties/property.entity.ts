import { Column, Entity } from 'typeorm';
import { KeptRow } from '../../../platform/records/kept-row.js';

/** One place with an address, a position, a time zone. */
@Entity('property')
export class PropertyRow extends KeptRow {
  @Column('uuid', { name: 'client_id' })
  clientId: string;

  @Column('text')
  name: string;

  @Column('text', { nullable: true })
  address: string | null;

  @Column('text', { nullable: true })
  city: string | null;

  @Column('double precision', { nullable: true })
  latitude: number | null;

  @Column('double precision', { nullable: true })
  longitude: number | null;

  @Column('double precision', { name: 'elevation_m', nullable: true })
  elevationM: number | null;

  @Column('text', { name: 'time_zone' })
  timeZone: string;

  @Column('uuid', { name: 'weather_station_id', nullable: true })
  weatherStationId: string | null;

  @Column('uuid', { name: 'water_supplier_id', nullable: true })
  waterSupplierId: string | null;

  @Column('text', { name: 'allowance_from', nullable: true })
  allowanceFrom: 'ordinance' | 'contract' | null;

  /** share of reference ET that the ordinance allows [–] */
  @Column('double precision', { name: 'allowance_etaf', nullable: true })
  allowanceEtaf: number | null;

  /** January to December [L] */
  @Column('double precision', { name: 'allowance_litres_per_month', array: true, nullable: true })
  allowanceLitresPerMonth: number[] | null;

  @Column('double precision', { name: 'special_landscape_area_m2', nullable: true })
  specialLandscapeAreaM2: number | null;

  @Column('text', { nullable: true })
  notes: string | null;
}
