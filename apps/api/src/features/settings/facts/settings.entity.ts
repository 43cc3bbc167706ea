import type { ControllerState, SettingsRecord } from '@rillbook/irrigation/settings/settings-fact.js';
import { Column, Entity } from 'typeorm';
import { OrganizationRow } from '../../../platform/records/kept-row.js';
import type { KeptProgram } from '../programs/kept-program.js';

/** Everything a controller is set to at a time: a dated fact. A device's fact is never edited; a file's own line may be mended by the file. */
@Entity('settings')
export class SettingsRow extends OrganizationRow {
  @Column('uuid', { name: 'controller_id' })
  controllerId: string;

  @Column('timestamptz', { name: 'effective_at' })
  effectiveAt: Date;

  @Column('text')
  record: SettingsRecord;

  @Column('text')
  state: ControllerState;

  @Column('jsonb', { default: [] })
  programs: KeptProgram[];

  @Column('uuid', { name: 'person_id', nullable: true })
  personId: string | null;

  @Column('timestamptz', { name: 'recorded_at', default: () => 'now()' })
  recordedAt: Date;

  /** the name that the device gave it when it was saved there */
  @Column('uuid', { name: 'device_record_id', nullable: true })
  deviceRecordId: string | null;

  /** the cells as they were typed in an imported file: `lines`, by column name */
  @Column('jsonb', { default: {} })
  typed: Record<string, unknown>;
}
