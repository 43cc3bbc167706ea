import type { ControllerState, Program, SettingsRecord } from '@rillbook/irrigation/settings/settings-fact.js';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import type { MergeCounts } from '../../../platform/records/merge-counts.js';
import { keepProgram } from '../programs/keep-program.service.js';
import { settingsFacts } from './settings.repository.js';

/** Settings as a file tells them. */
export interface SettingsToMerge {
  readonly controllerId: string;
  readonly effectiveAt: Date;
  readonly record: SettingsRecord;
  readonly state: ControllerState;
  readonly programs: readonly Program[];
  readonly typed: Readonly<Record<string, unknown>>;
}

/** Merges settings by controller, time and record, in one statement; the same again changes nothing. Of several with one name the last stands. */
export async function mergeSettings(tx: OrganizationTransaction, facts: readonly SettingsToMerge[]): Promise<MergeCounts> {
  if (!facts.length) return { created: 0, changed: 0, same: 0 };
  const kept = facts.map((fact) => ({ ...fact, programs: fact.programs.map(keepProgram), typed: { ...fact.typed }, deviceRecordId: null }));
  const byName = new Map(kept.map((fact) => [`${fact.controllerId} ${fact.effectiveAt.getTime()} ${fact.record}`, fact]));
  const { created, changed } = await settingsFacts.put(tx, [...byName.values()]);
  return { created, changed, same: facts.length - created - changed };
}
