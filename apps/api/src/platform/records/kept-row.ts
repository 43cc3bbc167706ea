import { Column, PrimaryColumn } from 'typeorm';

/** Columns of every row that belongs to an organization. */
export abstract class OrganizationRow {
  @PrimaryColumn('uuid', { name: 'organization_id' })
  organizationId: string;

  @PrimaryColumn('uuid', { default: () => 'gen_random_uuid()' })
  id: string;
}

/** Columns of a thing that is created, changed and retired: its version goes up by one with each change. */
export abstract class KeptRow extends OrganizationRow {
  @Column('integer', { default: 1 })
  version: number;

  @Column('timestamptz', { name: 'retired_at', nullable: true })
  retiredAt: Date | null;

  /** the cells as they were typed in an imported file, by column name */
  @Column('jsonb', { default: {} })
  typed: Record<string, string>;
}
