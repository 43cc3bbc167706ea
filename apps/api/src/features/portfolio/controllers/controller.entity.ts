import { Column, Entity } from 'typeorm';
import { KeptRow } from '../../../platform/records/kept-row.js';
import type { AdjustScope } from './adjust-scope.js';

/** The irrigation timer of a property, whoever made it. */
@Entity('controller')
export class ControllerRow extends KeptRow {
  @Column('uuid', { name: 'property_id' })
  propertyId: string;

  @Column('text')
  name: string;

  /** how many it has */
  @Column('integer')
  stations: number;

  /** how many it holds */
  @Column('integer', { nullable: true })
  programs: number | null;

  @Column('integer', { name: 'starts_per_program', nullable: true })
  startsPerProgram: number | null;

  @Column('double precision', { name: 'max_minutes', nullable: true })
  maxMinutes: number | null;

  /** run times are set in steps of this [min] */
  @Column('double precision', { name: 'minute_step', nullable: true })
  minuteStep: number | null;

  /** what its percent adjustment holds for */
  @Column('text', { name: 'adjust_scope', nullable: true })
  adjustScope: AdjustScope | null;

  @Column('double precision', { name: 'adjust_step_percent', nullable: true })
  adjustStepPercent: number | null;

  @Column('double precision', { name: 'max_adjust_percent', nullable: true })
  maxAdjustPercent: number | null;

  /** January to December, of timers that hold them [%] */
  @Column('double precision', { name: 'monthly_adjust_percent', array: true, nullable: true })
  monthlyAdjustPercent: number[] | null;

  /** how many programs run side by side */
  @Column('integer', { name: 'runs_at_once', nullable: true })
  runsAtOnce: number | null;

  @Column('boolean', { name: 'cycle_soak', nullable: true })
  cycleSoak: boolean | null;

  @Column('boolean', { name: 'master_valve', nullable: true })
  masterValve: boolean | null;

  @Column('boolean', { name: 'rain_sensor', nullable: true })
  rainSensor: boolean | null;

  @Column('double precision', { name: 'rain_sensor_mm', nullable: true })
  rainSensorMm: number | null;

  @Column('boolean', { name: 'flow_sensor', nullable: true })
  flowSensor: boolean | null;

  @Column('text', { nullable: true })
  location: string | null;
}
