import { createHash } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { asProblem } from '../../../platform/problems/answer.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import type { Problem } from '../../../platform/problems/problem.js';
import { isUuid } from '../../../platform/records/uuid.js';
import { DoOperation } from '../deeds/do-operation.service.js';
import { phonesProblems } from '../phones.problems.js';
import type { OperationAnswer, OperationRow, Verdict } from './operation.entity.js';
import type { OperationInput } from './operation.input.js';
import { operations } from './operation.repository.js';

/** What a phone is told of one operation. */
export type Taken = Pick<OperationRow, 'id' | 'verdict' | 'answer'>;

/**
 * Takes one operation: does it once, however often it is sent, and keeps it in the journal in the same transaction as its effect.
 *
 * The same key and body: what was answered the first time, except that what was refused is tried again, for the reason may be gone.
 * The same key with another body: a conflict; what came first stands.
 */
@Injectable()
export class TakeOperation {
  constructor(private readonly doing: DoOperation) {}

  async run(tx: OrganizationTransaction, deviceId: string, input: OperationInput): Promise<Taken> {
    if (!isUuid(input.key)) throw platformProblems.valueRefused({ field: 'key', found: input.key, expected: 'a UUID made by the phone' });
    const id = input.key.toLowerCase();
    const bodyHash = hashOf(input);
    const before = await operations.ofKey(tx, id);
    if (before && before.bodyHash !== bodyHash)
      return {
        id,
        verdict: 'conflict',
        answer: { problem: told(phonesProblems.operationConflict({ key: id, receivedAt: before.receivedAt.toISOString() })) },
      };
    if (before && before.verdict !== 'refused') return before;
    const taken = { id, ...(await this.attempt(tx, input)) };
    await operations.keep(tx, {
      ...taken,
      organizationId: tx.organizationId,
      deviceId,
      deviceSeq: input.seq,
      kind: input.kind,
      payloadVersion: input.payloadVersion,
      body: input.body,
      bodyHash,
      savedAt: input.savedAt,
      personId: tx.actor.personId,
    });
    return taken;
  }

  /** Either everything of an operation is done, or nothing of it and why. */
  private async attempt(tx: OrganizationTransaction, input: OperationInput): Promise<{ verdict: Verdict; answer: OperationAnswer }> {
    try {
      const { verdict, other, problem } = await tx.attempt(() => this.doing.run(tx, input));
      return { verdict, answer: { ...(other && { other }), ...(problem && { problem: told(problem) }) } };
    } catch (thrown) {
      return { verdict: 'refused', answer: { problem: told(asProblem(thrown)) } };
    }
  }
}

const told = ({ code, message, details }: Problem) => ({ code, message, details });

const hashOf = ({ kind, payloadVersion, body }: OperationInput): string =>
  createHash('sha256').update(`${kind}\n${payloadVersion}\n${body}`).digest('hex');
