import { Column, Entity } from 'typeorm';
import { KeptRow } from '../../../platform/records/kept-row.js';
import type { WorkOrderKind, WorkOrderState } from './work-order-kinds.js';

/** A part that a repair needs. */
export interface PartOfOrder {
  readonly name: string;
  readonly count: number;
  /** of one [money] */
  readonly price: number;
}

/** Of what an order's words are: of the finding that it was made for, or of the settings of a season. */
export type WordsOf = 'finding' | 'season';

/** A piece of work on a property. */
@Entity('work_order')
export class WorkOrderRow extends KeptRow {
  @Column('uuid', { name: 'property_id' })
  propertyId: string;

  @Column('uuid', { name: 'finding_id', nullable: true })
  findingId: string | null;

  @Column('uuid', { name: 'controller_id', nullable: true })
  controllerId: string | null;

  @Column('uuid', { name: 'meter_id', nullable: true })
  meterId: string | null;

  @Column('uuid', { name: 'zone_id', nullable: true })
  zoneId: string | null;

  /** where it is given out, was done, or was left for another day */
  @Column('uuid', { name: 'stop_id', nullable: true })
  stopId: string | null;

  @Column('text')
  kind: WorkOrderKind;

  @Column('text', { default: 'open' })
  state: WorkOrderState;

  @Column('text', { default: '' })
  what: string;

  /** of what the product itself wrote `what`; null where somebody wrote it */
  @Column('text', { name: 'words_of', nullable: true })
  wordsOf: WordsOf | null;

  @Column('double precision', { name: 'estimate_minutes', nullable: true })
  estimateMinutes: number | null;

  /** the first day on which it may be done; null: any */
  @Column('date', { name: 'not_before', nullable: true })
  notBefore: string | null;

  /** the last day on which it may be done */
  @Column('date', { name: 'due_on', nullable: true })
  dueOn: string | null;

  /** what somebody of the crew must be able to do */
  @Column('text', { array: true, default: '{}' })
  skills: string[];

  @Column('double precision', { name: 'labour_hours', nullable: true })
  labourHours: number | null;

  /** of one hour [money] */
  @Column('double precision', { name: 'labour_rate', nullable: true })
  labourRate: number | null;

  @Column('jsonb', { default: [] })
  parts: PartOfOrder[];

  /** whether the client asked for its price and decides on it, whatever they let be spent without asking */
  @Column('boolean', { name: 'is_offer', default: false })
  isOffer: boolean;

  @Column('uuid', { name: 'planned_settings_id', nullable: true })
  plannedSettingsId: string | null;

  /** when the rain pause ends that is to be set; null for every other work */
  @Column('timestamptz', { name: 'pause_until', nullable: true })
  pauseUntil: Date | null;

  @Column('text', { name: 'done_note', nullable: true })
  doneNote: string | null;

  /** what was left for another day, or why it was dropped */
  @Column('text', { name: 'left_note', nullable: true })
  leftNote: string | null;

  @Column('timestamptz', { name: 'done_at', nullable: true })
  doneAt: Date | null;

  @Column('uuid', { name: 'approved_by', nullable: true })
  approvedBy: string | null;

  @Column('timestamptz', { name: 'approved_at', nullable: true })
  approvedAt: Date | null;

  @Column('timestamptz', { name: 'created_at', default: () => 'now()' })
  createdAt: Date;
}
