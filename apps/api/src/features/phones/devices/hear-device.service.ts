import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { organizations } from '../../../platform/identity/organizations/organization.repository.js';
import { nowOf } from '../../../platform/jobs/clock.js';
import { between, judgeValues, text } from '../../../platform/problems/judge-values.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { isUuid } from '../../../platform/records/uuid.js';
import { namedBy } from './named-by.js';
import { devices } from './device.repository.js';

/** What a phone says of itself. */
export interface HeardDevice {
  readonly id: string;
  readonly name?: string | null;
  readonly appVersion?: string | null;
  readonly waiting: number;
  readonly photosWaiting: number;
  readonly refused: number;
  readonly oldestWaitingAt?: Date | null;
}

const count = between(0, 1_000_000);

/** Hears what is still on a phone, so that the office knows of work that only one phone has. */
@Injectable()
export class HearDevice {
  async run(tx: OrganizationTransaction, device: HeardDevice): Promise<void> {
    judgeValues(device, { name: text, appVersion: text, waiting: count, photosWaiting: count, refused: count });
    if (!isUuid(device.id))
      throw platformProblems.valueRefused({ field: 'device.id', found: device.id, expected: 'a UUID made by the phone' });
    await devices.keep(tx, {
      organizationId: tx.organizationId,
      id: await nameOf(tx, device.id),
      personId: tx.actor.personId,
      name: device.name?.trim() || null,
      appVersion: device.appVersion?.trim() || null,
      heardAt: nowOf(await organizations.own(tx)),
      waiting: device.waiting,
      photosWaiting: device.photosWaiting,
      refused: device.refused,
      oldestWaitingAt: device.oldestWaitingAt ?? null,
    });
  }
}

/** What another person's phone holds is not overwritten: under a name that is theirs this is a phone of its own. */
async function nameOf(tx: OrganizationTransaction, id: string): Promise<string> {
  const known = await devices.ofId(tx, id);
  const isOthers = known !== null && known.personId !== null && known.personId !== tx.actor.personId;
  return isOthers ? namedBy(`${id.toLowerCase()} ${tx.actor.personId ?? ''}`) : id;
}
