import { Column, Entity, JoinColumn, ManyToOne } from 'typeorm';
import type { Role } from '../../database/actor.js';
import { OrganizationRow } from '../../records/kept-row.js';
import { PersonRow } from './person.entity.js';

/** A person's place in an organization. */
@Entity('member')
export class MemberRow extends OrganizationRow {
  @Column('uuid', { name: 'person_id' })
  personId: string;

  @ManyToOne(() => PersonRow)
  @JoinColumn({ name: 'person_id' })
  person: PersonRow;

  @Column('text')
  role: Role;

  /** the one client that a member of role client belongs to */
  @Column('uuid', { name: 'client_id', nullable: true })
  clientId: string | null;

  @Column('integer', { default: 1 })
  version: number;

  @Column('timestamptz', { name: 'retired_at', nullable: true })
  retiredAt: Date | null;

  @Column('timestamptz', { name: 'created_at', default: () => 'now()' })
  createdAt: Date;
}
