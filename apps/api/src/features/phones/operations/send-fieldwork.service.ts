import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Live } from '../../../platform/database/live.js';
import { HearDevice } from '../devices/hear-device.service.js';
import { FIELDWORK } from '../live/tell-fieldwork.js';
import { phonesProblems } from '../phones.problems.js';
import type { DeviceInput, OperationInput } from './operation.input.js';
import { operations } from './operation.repository.js';
import { TakeOperation, type Taken } from './take-operation.service.js';

/** A phone that has been away all day sends its operations in parts. */
const MOST_AT_ONCE = 200;

/** Takes what a phone sends, in the order in which it was saved there, and hears what is still on it. */
@Injectable()
export class SendFieldwork {
  constructor(
    private readonly taking: TakeOperation,
    private readonly hearing: HearDevice,
    private readonly live: Live,
  ) {}

  async run(tx: OrganizationTransaction, device: DeviceInput, sent: readonly OperationInput[]): Promise<Taken[]> {
    if (sent.length > MOST_AT_ONCE) throw phonesProblems.batchTooLarge({ found: sent.length, most: MOST_AT_ONCE });
    await operations.hold(
      tx,
      sent.map(({ key }) => key),
    );
    const taken: Taken[] = [];
    for (const operation of sent) taken.push(await this.taking.run(tx, device.id, operation));
    await this.hearing.run(tx, device);
    if (sent.length > 0) await this.live.tell(tx, FIELDWORK);
    return taken;
  }
}
