import { Injectable } from '@nestjs/common';
import type { ControllerState, SettingsRecord } from '@rillbook/irrigation/settings/settings-fact.js';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Permission, roleIncludes } from '../../../platform/identity/permission.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { Events } from '../../../platform/records/events.js';
import { isUuid } from '../../../platform/records/uuid.js';
import { judgePrograms } from '../programs/judge-programs.js';
import { type KeptProgram, samePrograms } from '../programs/kept-program.js';
import type { ProgramInput } from '../programs/program.input.js';
import { requireController } from '../require-controller.js';
import { SettingsRecorded } from '../settings-recorded.event.js';
import type { SettingsRow } from './settings.entity.js';
import type { SettingsInput } from './settings.input.js';
import { type NewSettings, settingsFacts } from './settings.repository.js';

/** What became of settings that were sent; `kept` is what stands under their name or in their place. */
export interface RecordedSettings {
  readonly outcome: 'kept' | 'conflict';
  readonly kept: SettingsRow;
}

const RECORDS: readonly SettingsRecord[] = ['found', 'left', 'planned'];
const STATES: readonly ControllerState[] = ['on', 'off', 'weather', 'unknown'];
/** A phone's clock may be wrong by days; what was found or left further ahead is a slip of the finger. */
const MOST_AHEAD_MS = 3 * 86_400_000;

/** Keeps settings once, however often they are sent; they are never edited. */
@Injectable()
export class RecordSettings {
  constructor(private readonly events: Events) {}

  async run(tx: OrganizationTransaction, input: SettingsInput): Promise<RecordedSettings> {
    const fact = factOf(input);
    // What a controller is to be set to is decided by those who give out work; the others tell what they found and left.
    if (fact.record === 'planned' && !roleIncludes(tx.actor.role, Permission.AssignWork))
      throw platformProblems.notAllowed({ permission: Permission.AssignWork });
    const before = await settingsFacts.ofDeviceRecord(tx, input.deviceRecordId);
    // What a person has recorded stays acknowledged to them, also when the property is no longer theirs to see.
    if (before && before.personId === tx.actor.personId) return compared(before, fact);
    const controller = await requireController(tx, input.controllerId);
    judgePrograms(controller, fact.programs);
    const id = await settingsFacts.insert(tx, fact);
    if (id === null) return this.taken(tx, fact);
    const [kept] = await settingsFacts.ofIds(tx, [id]);
    await this.events.emit(tx, new SettingsRecorded(controller.id, fact.effectiveAt));
    return { outcome: 'kept', kept: kept! };
  }

  /** The name or the place is taken: by the same settings, or by others. */
  private async taken(tx: OrganizationTransaction, fact: NewSettings): Promise<RecordedSettings> {
    const kept = (await settingsFacts.ofDeviceRecord(tx, fact.deviceRecordId!)) ?? (await settingsFacts.at(tx, fact));
    if (kept!.personId !== tx.actor.personId) await requireController(tx, kept!.controllerId);
    return compared(kept!, fact);
  }
}

const compared = (kept: SettingsRow, fact: NewSettings): RecordedSettings => ({
  outcome: sameContent(kept, fact) ? 'kept' : 'conflict',
  kept,
});

const sameContent = (kept: SettingsRow, fact: NewSettings): boolean =>
  kept.controllerId === fact.controllerId &&
  kept.effectiveAt.getTime() === fact.effectiveAt.getTime() &&
  kept.record === fact.record &&
  kept.state === fact.state &&
  samePrograms(kept.programs, fact.programs);

function factOf(input: SettingsInput): NewSettings {
  const { deviceRecordId, effectiveAt } = input;
  const refuse = (field: string, found: unknown, expected: string): never => {
    throw platformProblems.valueRefused({ field, found, expected });
  };
  const record = RECORDS.find((word) => word === input.record) ?? refuse('record', input.record, 'found, left or planned');
  const state = STATES.find((word) => word === input.state) ?? refuse('state', input.state, 'on, off, weather or unknown');
  if (!isUuid(deviceRecordId)) refuse('deviceRecordId', deviceRecordId, 'a UUID made by the device');
  if (record !== 'planned' && effectiveAt.getTime() > Date.now() + MOST_AHEAD_MS)
    refuse('effectiveAt', effectiveAt.toISOString(), 'a time that is not in the future');
  if (state !== 'on' && input.programs.length)
    refuse('programs', input.programs.length, `none, for a controller in state ${state} runs no program of its own`);
  return {
    deviceRecordId,
    controllerId: input.controllerId.toLowerCase(),
    effectiveAt,
    record,
    state,
    programs: input.programs.map(keptOf),
    typed: {},
  };
}

const keptOf = ({ name, days, starts, adjustPercent, stations }: ProgramInput): KeptProgram => ({
  name: name.trim(),
  days: days.trim(),
  starts,
  adjustPercent: adjustPercent ?? null,
  stations: stations.map(({ station, minutes, cycles, soakMinutes }) => ({
    station,
    minutes,
    cycles: cycles ?? null,
    soakMinutes: soakMinutes ?? null,
  })),
});
