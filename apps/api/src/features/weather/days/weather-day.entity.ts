import { Column, Entity, PrimaryColumn } from 'typeorm';

/** One day of a weather station as it was measured: what was not measured is null, never zero. */
@Entity('weather_day')
export class WeatherDayRow {
  @PrimaryColumn('uuid', { name: 'organization_id' })
  organizationId: string;

  @PrimaryColumn('uuid', { name: 'station_id' })
  stationId: string;

  @PrimaryColumn('date')
  day: string;

  @Column('double precision', { name: 'tmax_c', nullable: true })
  tmaxC: number | null;

  @Column('double precision', { name: 'tmin_c', nullable: true })
  tminC: number | null;

  @Column('double precision', { name: 'rh_max_percent', nullable: true })
  rhMaxPercent: number | null;

  @Column('double precision', { name: 'rh_min_percent', nullable: true })
  rhMinPercent: number | null;

  @Column('double precision', { name: 'dew_point_c', nullable: true })
  dewPointC: number | null;

  @Column('double precision', { name: 'wind_m_per_s', nullable: true })
  windMPerS: number | null;

  @Column('double precision', { name: 'wind_height_m', nullable: true })
  windHeightM: number | null;

  @Column('double precision', { name: 'solar_mj_per_m2', nullable: true })
  solarMjPerM2: number | null;

  @Column('double precision', { name: 'rain_mm', nullable: true })
  rainMm: number | null;

  /** reference evapotranspiration as the source itself states it */
  @Column('double precision', { name: 'given_eto_mm', nullable: true })
  givenEtoMm: number | null;

  /** the cells as they were typed in an imported file, by column name */
  @Column('jsonb', { default: {} })
  typed: Record<string, string>;
}
