import { Column, Entity } from 'typeorm';
import { OrganizationRow } from './kept-row.js';

/** What was done to a thing, by whom, when and how: never changed afterwards. */
@Entity('change')
export class ChangeRow extends OrganizationRow {
  @Column('text')
  thing: string;

  @Column('uuid', { name: 'thing_id' })
  thingId: string;

  @Column('integer', { name: 'thing_version' })
  thingVersion: number;

  @Column('text')
  deed: 'create' | 'change' | 'retire' | 'restore';

  @Column('jsonb', { nullable: true })
  before: Record<string, unknown> | null;

  @Column('jsonb', { nullable: true })
  after: Record<string, unknown> | null;

  @Column('uuid', { name: 'person_id', nullable: true })
  personId: string | null;

  @Column('text')
  way: 'screen' | 'import' | 'job';

  @Column('timestamptz', { default: () => 'now()' })
  at: Date;
}
