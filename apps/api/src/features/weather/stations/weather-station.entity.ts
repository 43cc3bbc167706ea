import { Column, Entity } from 'typeorm';
import { KeptRow } from '../../../platform/records/kept-row.js';

/** A source of daily weather. */
@Entity('weather_station')
export class WeatherStationRow extends KeptRow {
  @Column('text')
  name: string;

  @Column('double precision')
  latitude: number;

  @Column('double precision')
  longitude: number;

  @Column('double precision', { name: 'elevation_m', nullable: true })
  elevationM: number | null;
}
