import { Column, Entity } from 'typeorm';
import { OrganizationRow } from '../../../platform/records/kept-row.js';

/**
 * What became of an operation: applied; applied although somebody changed other things of it meanwhile; against what somebody else said
 * of the same; refused.
 */
export type Verdict = 'applied' | 'parallel' | 'conflict' | 'refused';

/** What the phone is answered, each time it asks. */
export interface OperationAnswer {
  readonly problem?: { readonly code: string; readonly message: string; readonly details: Readonly<Record<string, unknown>> };
  /** what stood there before, or stands there instead, and whose it is */
  readonly other?: Readonly<Record<string, unknown>>;
}

/** An operation as a phone sent it. Its id is the key that the phone made when it was saved. */
@Entity('field_operation')
export class OperationRow extends OrganizationRow {
  @Column('uuid', { name: 'device_id' })
  deviceId: string;

  @Column('integer', { name: 'device_seq' })
  deviceSeq: number;

  @Column('text')
  kind: string;

  @Column('integer', { name: 'payload_version' })
  payloadVersion: number;

  /** as it came, so that nothing is lost of what could not be applied */
  @Column('text')
  body: string;

  @Column('text', { name: 'body_hash' })
  bodyHash: string;

  @Column('timestamptz', { name: 'saved_at' })
  savedAt: Date;

  @Column('timestamptz', { name: 'received_at', default: () => 'now()' })
  receivedAt: Date;

  @Column('uuid', { name: 'person_id', nullable: true })
  personId: string | null;

  @Column('text')
  verdict: Verdict;

  @Column('jsonb', { default: {} })
  answer: OperationAnswer;

  @Column('timestamptz', { name: 'settled_at', nullable: true })
  settledAt: Date | null;

  @Column('uuid', { name: 'settled_by', nullable: true })
  settledBy: string | null;
}
