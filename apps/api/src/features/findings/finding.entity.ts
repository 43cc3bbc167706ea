import type { DismissReason } from '@rillbook/metering/detection/life/kept-finding.js';
import { Column, Entity } from 'typeorm';
import { OrganizationRow } from '../../platform/records/kept-row.js';

/** The states of a finding's life. */
export type FindingState = 'open' | 'in work' | 'resolved' | 'dismissed';

/** Something a person should look at. */
@Entity('finding')
export class FindingRow extends OrganizationRow {
  @Column('uuid', { name: 'property_id' })
  propertyId: string;

  @Column('uuid', { name: 'meter_id', nullable: true })
  meterId: string | null;

  @Column('uuid', { name: 'controller_id', nullable: true })
  controllerId: string | null;

  @Column('uuid', { name: 'zone_id', nullable: true })
  zoneId: string | null;

  /** in the exact words of the domain */
  @Column('text')
  kind: string;

  /** one for each cause: the same cause never opens a second finding */
  @Column('text', { name: 'cause_key' })
  causeKey: string;

  /** shared by the kinds that one cause can take */
  @Column('text', { name: 'cause_family', default: '' })
  causeFamily: string;

  @Column('text', { default: 'open' })
  state: FindingState;

  @Column('date', { name: 'from_on', nullable: true })
  fromOn: string | null;

  @Column('date', { name: 'until_on', nullable: true })
  untilOn: string | null;

  @Column('double precision', { nullable: true })
  litres: number | null;

  @Column('double precision', { nullable: true })
  money: number | null;

  @Column('double precision', { nullable: true })
  confidence: number | null;

  /** code and details; the screens make the sentence */
  @Column('jsonb')
  says: { code: string; details: Record<string, unknown> };

  @Column('jsonb', { default: {} })
  evidence: Record<string, unknown>;

  /** the time of the newest input that was needed to open it */
  @Column('timestamptz', { name: 'opened_at' })
  openedAt: Date;

  /** the time of the record that showed its end; null while it is seen */
  @Column('timestamptz', { name: 'cleared_at', nullable: true })
  clearedAt: Date | null;

  /** what the same cause was told as before, the oldest first, with the instant since when */
  @Column('jsonb', { default: [] })
  history: { kind: string; at: string }[];

  @Column('integer', { name: 'came_back', default: 0 })
  cameBack: number;

  @Column('text', { name: 'dismissed_why', nullable: true })
  dismissedWhy: string | null;

  @Column('text', { name: 'dismissed_reason', nullable: true })
  dismissedReason: DismissReason | null;

  @Column('text', { name: 'resolved_with', nullable: true })
  resolvedWith: string | null;

  /** silent to the end of this day; null where it is silent until it clears, or not at all */
  @Column('date', { name: 'acknowledged_until', nullable: true })
  acknowledgedUntil: string | null;

  @Column('timestamptz', { name: 'acknowledged_at', nullable: true })
  acknowledgedAt: Date | null;

  @Column('text', { name: 'acknowledged_note', nullable: true })
  acknowledgedNote: string | null;

  @Column('uuid', { name: 'acknowledged_by', nullable: true })
  acknowledgedBy: string | null;

  @Column('uuid', { name: 'decided_by', nullable: true })
  decidedBy: string | null;

  @Column('timestamptz', { name: 'decided_at', nullable: true })
  decidedAt: Date | null;

  @Column('integer', { default: 1 })
  version: number;
}
