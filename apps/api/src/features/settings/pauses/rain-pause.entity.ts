import { Column, Entity } from 'typeorm';
import { OrganizationRow } from '../../../platform/records/kept-row.js';

/** A controller stopped for a time. */
@Entity('rain_pause')
export class RainPauseRow extends OrganizationRow {
  @Column('uuid', { name: 'controller_id' })
  controllerId: string;

  @Column('timestamptz', { name: 'paused_from' })
  pausedFrom: Date;

  /** null while it is still paused */
  @Column('timestamptz', { name: 'paused_until', nullable: true })
  pausedUntil: Date | null;

  /** the cells as they were typed in an imported file, by column name */
  @Column('jsonb', { default: {} })
  typed: Record<string, string>;
}
