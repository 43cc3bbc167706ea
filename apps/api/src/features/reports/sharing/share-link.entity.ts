import { Column, Entity } from 'typeorm';
import { OrganizationRow } from '../../../platform/records/kept-row.js';

/** A link that shows one report to whoever has it, until it ends. */
@Entity('share_link')
export class ShareLinkRow extends OrganizationRow {
  @Column('uuid', { name: 'report_id' })
  reportId: string;

  @Column('bytea', { name: 'token_hash' })
  tokenHash: Buffer;

  /** hash of the name under which a device asked for it; null where it gave none */
  @Column('bytea', { name: 'name_hash', nullable: true })
  nameHash: Buffer | null;

  /** with that name it gives the secret */
  @Column('bytea', { nullable: true })
  salt: Buffer | null;

  /** for how long it was asked. [d] */
  @Column('integer', { nullable: true })
  days: number | null;

  @Column('timestamptz', { name: 'expires_at' })
  expiresAt: Date;

  @Column('timestamptz', { name: 'revoked_at', nullable: true })
  revokedAt: Date | null;

  @Column('uuid', { name: 'created_by', nullable: true })
  createdBy: string | null;

  @Column('timestamptz', { name: 'created_at', default: () => 'now()' })
  createdAt: Date;
}
