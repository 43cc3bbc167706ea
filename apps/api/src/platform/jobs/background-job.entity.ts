import { Column, Entity } from 'typeorm';
import { OrganizationRow } from '../records/kept-row.js';

/** How work ended, for pages to say in the person's language: the code of a problem where it failed. */
export interface JobOutcome {
  readonly code: string;
  readonly details: Readonly<Record<string, unknown>>;
}

/** How far work is that was asked together. */
export interface Batch {
  readonly batch: string;
  readonly total: number;
  readonly over: number;
  readonly failed: number;
  readonly running: number;
  /** of those that are queued, for an instant that is yet to come */
  readonly waiting: number;
  /** the first of these instants; null where nothing queued has one */
  readonly waitsUntil: string | null;
}

/** What ended with the same code, its numbers added up. */
export interface BatchSum {
  readonly code: string;
  readonly details: Readonly<Record<string, number>>;
}

/** What a batch came to. */
export interface Together {
  readonly counts: Batch;
  readonly sums: readonly BatchSum[];
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

  /** what was asked with the same word is shown as one; null where it stands alone */
  @Column('text', { nullable: true })
  batch: string | null;

  /** whether it was the first of its batch, or stands alone */
  @Column('boolean', { default: true })
  leads: boolean;

  /** of the first of a batch: what it came to, once all of it is over; null while something of it is open */
  @Column('jsonb', { nullable: true })
  together: Together | null;

  @Column('uuid', { name: 'person_id', nullable: true })
  personId: string | null;

  @Column('timestamptz', { name: 'created_at', default: () => 'now()' })
  createdAt: Date;

  @Column('timestamptz', { name: 'finished_at', nullable: true })
  finishedAt: Date | null;
}
