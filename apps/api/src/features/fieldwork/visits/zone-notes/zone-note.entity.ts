import { Column, Entity } from 'typeorm';
import { OrganizationRow } from '../../../../platform/records/kept-row.js';

/** What a zone walk can find, in the exact words of the column and of the screen. */
export const ZONE_NOTE_KINDS = ['broken head', 'leak', 'clogged', 'overspray', 'coverage', 'wilting', 'other'] as const;
export type ZoneNoteKind = (typeof ZONE_NOTE_KINDS)[number];

/** Something seen on a zone walk. */
@Entity('zone_note')
export class ZoneNoteRow extends OrganizationRow {
  @Column('uuid', { name: 'visit_id' })
  visitId: string;

  @Column('uuid', { name: 'zone_id', nullable: true })
  zoneId: string | null;

  @Column('text')
  kind: ZoneNoteKind;

  @Column('integer', { default: 1 })
  count: number;

  @Column('text', { nullable: true })
  word: string | null;

  @Column('boolean', { default: false })
  repaired: boolean;

  /** who said it last; null for notes from before this was kept */
  @Column('uuid', { name: 'person_id', nullable: true })
  personId: string | null;

  @Column('timestamptz', { name: 'recorded_at', default: () => 'now()' })
  recordedAt: Date;
}
