import { Column, Entity } from 'typeorm';
import { KeptRow } from '../../../platform/records/kept-row.js';
import type { WaterNeed } from '@rillbook/agronomy/plants/plant-words.js';

/** A species or plant type in a zone. */
@Entity('planting')
export class PlantingRow extends KeptRow {
  @Column('uuid', { name: 'zone_id' })
  zoneId: string;

  @Column('text')
  species: string;

  @Column('double precision', { name: 'cover_percent', nullable: true })
  coverPercent: number | null;

  @Column('text', { name: 'water_need', nullable: true })
  waterNeed: WaterNeed | null;

  @Column('date', { name: 'planted_on', nullable: true })
  plantedOn: string | null;
}
