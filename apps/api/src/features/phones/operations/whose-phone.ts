import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import type { SaidBefore } from '../deeds/done-operation.js';
import { devices } from '../devices/device.repository.js';
import { operations } from './operation.repository.js';

/** So much of a phone's id tells it from the others of a company. */
const TAG_LENGTH = 4;

/** How people call a phone: what it calls itself, else the end of its id. */
export const phoneName = (id: string, name: string | null | undefined): string => name ?? id.slice(-TAG_LENGTH).toUpperCase();

/** The phone on which another word was saved and when, and whether the same person said it, so that two phones of one person are told apart. */
export async function whosePhone(tx: OrganizationTransaction, before: SaidBefore, key: string, personId: string | null) {
  const row = await operationOf(tx, before, key);
  const { personId: by, savedAt } = row ?? { personId: before.personId, savedAt: before.at };
  return {
    phone: row && phoneName(row.deviceId, (await devices.ofId(tx, row.deviceId))?.name),
    savedAt: savedAt?.toISOString() ?? null,
    isSelf: by !== null && by === personId,
  };
}

/** Its operation: by the key that the record kept, else the last that said so. */
function operationOf(tx: OrganizationTransaction, before: SaidBefore, butKey: string) {
  if (before.id === undefined) return operations.lastSaying(tx, before, butKey);
  return before.id === null ? null : operations.ofKey(tx, before.id);
}
