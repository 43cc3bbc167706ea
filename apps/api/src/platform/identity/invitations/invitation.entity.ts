import { Column, Entity } from 'typeorm';
import { OrganizationRow } from '../../records/kept-row.js';
import type { Role } from '../../database/actor.js';

/** Somebody is asked to become a member; the link is told once, the table keeps its hash. */
@Entity('invitation')
export class InvitationRow extends OrganizationRow {
  @Column('text')
  email: string;

  @Column('text')
  name: string;

  @Column('text', { default: 'en' })
  language: 'en' | 'es';

  @Column('text')
  role: Role;

  @Column('uuid', { name: 'client_id', nullable: true })
  clientId: string | null;

  @Column('bytea', { name: 'token_hash', select: false })
  tokenHash: Buffer;

  @Column('timestamptz', { name: 'expires_at' })
  expiresAt: Date;

  @Column('timestamptz', { name: 'accepted_at', nullable: true })
  acceptedAt: Date | null;

  @Column('uuid', { name: 'invited_by', nullable: true })
  invitedBy: string | null;

  @Column('timestamptz', { name: 'created_at', default: () => 'now()' })
  createdAt: Date;
}
