import { setTimeout } from 'node:timers/promises';
import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Live } from '../../../platform/database/live.js';
import { isPassingFault } from '../../../platform/problems/passing-fault.js';
import { HearDevice } from '../devices/hear-device.service.js';
import { FIELDWORK } from '../live/tell-fieldwork.js';
import { phonesProblems } from '../phones.problems.js';
import type { DeviceInput, OperationInput } from './operation.input.js';
import { operations } from './operation.repository.js';
import { TakeOperation, type Taken } from './take-operation.service.js';

/** A phone that has been away all day sends its operations in parts. */
const MOST_AT_ONCE = 200;

const MOST_TRIES = 5;

/** The longest pause before the second try. [ms] */
const PAUSE_MS = 100;

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
    const taken = await untilItPasses(tx, () => this.takeAll(tx, device.id, sent));
    await this.hearing.run(tx, device);
    if (sent.length > 0) await this.live.tell(tx, FIELDWORK);
    return taken;
  }

  private async takeAll(tx: OrganizationTransaction, deviceId: string, sent: readonly OperationInput[]): Promise<Taken[]> {
    const taken: Taken[] = [];
    for (const operation of sent) taken.push(await this.taking.run(tx, deviceId, operation));
    return taken;
  }
}

/**
 * Two phones that tell of the same zones in another order may wait for each other, and the database then ends one of them. Nothing of that one is
 * kept, and it begins anew, with all that it held let go; what cannot be had so is sent again by the phone.
 */
async function untilItPasses<T>(tx: OrganizationTransaction, work: () => Promise<T>): Promise<T> {
  for (let tries = 1; ; tries += 1) {
    try {
      return await tx.attempt(work);
    } catch (thrown) {
      if (tries === MOST_TRIES || !isPassingFault(thrown)) throw thrown;
      tx.kept.clear();
      await setTimeout(Math.random() * PAUSE_MS * tries);
    }
  }
}
