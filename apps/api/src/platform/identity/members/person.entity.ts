import { Column, Entity, PrimaryColumn } from 'typeorm';

/** Somebody who signs in; belongs to no organization, and may be a member of several. */
@Entity('person')
export class PersonRow {
  @PrimaryColumn('uuid', { default: () => 'gen_random_uuid()' })
  id: string;

  @Column('text')
  email: string;

  @Column('text')
  name: string;

  @Column('text', { default: 'en' })
  language: 'en' | 'es';

  /** argon2id; never read with the rest of the row */
  @Column('text', { name: 'password_hash', nullable: true, select: false })
  passwordHash: string | null;

  @Column('timestamptz', { name: 'created_at', default: () => 'now()' })
  createdAt: Date;
}
