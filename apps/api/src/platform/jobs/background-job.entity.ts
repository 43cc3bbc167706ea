import { Column, Entity } from 'typeorm';
import { OrganizationRow } from '../records/kept-row.js';

/** How work ended, for pages to say in the person's language: the code of a problem where it failed. */
export interface JobOutcome {
  readonly code: string;
  readonly details: Readonly<Record<string, unknown>>;
}

/** Work in the background, as people see it: what, how far, how it ended. */
@Entity('background_job')
export class BackgroundJobRow extends OrganizationRow {
  @Column('text')
  kind: string;

  @Column('text', { default: 'queued' })
  state: 'queued' | 'running' | 'done' | 'failed';

  @Column('integer', { default: 0 })
  done: number;

  @Column('integer', { default: 0 })
  total: number;

  /** how it ended, in a sentence */
  @Column('text', { nullable: true })
  says: string | null;

  /** the same as a code with its details; null where only the sentence is known */
  @Column('jsonb', { nullable: true })
  outcome: JobOutcome | null;

  @Column('jsonb', { default: {} })
  payload: Record<string, unknown>;

  @Column('uuid', { name: 'person_id', nullable: true })
  personId: string | null;

  @Column('timestamptz', { name: 'created_at', default: () => 'now()' })
  createdAt: Date;

  @Column('timestamptz', { name: 'finished_at', nullable: true })
  finishedAt: Date | null;
}
