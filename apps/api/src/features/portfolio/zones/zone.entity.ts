import { Column, Entity } from 'typeorm';
import { KeptRow } from '../../../platform/records/kept-row.js';
import type { Plants, Sun, WaterNeed } from '@rillbook/agronomy/plants/plant-words.js';
import type { SoilTexture } from '@rillbook/agronomy/soil/soil-texture.js';
import type { IrrigationMethod } from '@rillbook/irrigation/hardware/irrigation-method.js';
import type { FlowSource } from './flow-source.js';

/** What one station waters. */
@Entity('zone')
export class ZoneRow extends KeptRow {
  @Column('uuid', { name: 'property_id' })
  propertyId: string;

  @Column('text')
  name: string;

  @Column('uuid', { name: 'controller_id', nullable: true })
  controllerId: string | null;

  @Column('integer', { nullable: true })
  station: number | null;

  @Column('uuid', { name: 'meter_id', nullable: true })
  meterId: string | null;

  @Column('boolean', { default: false })
  unmetered: boolean;

  @Column('double precision', { name: 'area_m2' })
  areaM2: number;

  @Column('text', { nullable: true })
  plants: Plants | null;

  @Column('text', { name: 'water_need', nullable: true })
  waterNeed: WaterNeed | null;

  /** overrides what the water need says [–] */
  @Column('double precision', { name: 'plant_factor', nullable: true })
  plantFactor: number | null;

  @Column('text')
  method: IrrigationMethod;

  @Column('double precision', { name: 'precip_mm_per_h', nullable: true })
  precipMmPerH: number | null;

  @Column('double precision', { name: 'flow_l_per_min', nullable: true })
  flowLPerMin: number | null;

  @Column('text', { name: 'flow_source', nullable: true })
  flowSource: FlowSource | null;

  @Column('double precision', { name: 'hand_l_per_week', nullable: true })
  handLPerWeek: number | null;

  /** distribution uniformity of the low quarter [–] */
  @Column('double precision', { name: 'du_lq', nullable: true })
  duLq: number | null;

  @Column('text', { nullable: true })
  soil: SoilTexture | null;

  @Column('double precision', { name: 'slope_percent', nullable: true })
  slopePercent: number | null;

  /** until the line is full and water comes out, at each start [min] */
  @Column('double precision', { name: 'fill_minutes', nullable: true })
  fillMinutes: number | null;

  @Column('text', { nullable: true })
  sun: Sun | null;

  /** density factor [–] */
  @Column('double precision', { nullable: true })
  density: number | null;

  @Column('double precision', { name: 'root_depth_mm', nullable: true })
  rootDepthMm: number | null;

  @Column('double precision', { name: 'mulch_mm', nullable: true })
  mulchMm: number | null;

  @Column('double precision', { name: 'leaching_fraction', nullable: true })
  leachingFraction: number | null;

  @Column('date', { name: 'established_on', nullable: true })
  establishedOn: string | null;
}
