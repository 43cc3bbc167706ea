import { createHash } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { asProblem } from '../../../platform/problems/answer.js';
import { isPassingFault } from '../../../platform/problems/passing-fault.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import type { Problem } from '../../../platform/problems/problem.js';
import { isUuid } from '../../../platform/records/uuid.js';
import { DoOperation } from '../deeds/do-operation.service.js';
import type { DoneOperation } from '../deeds/done-operation.js';
import { phonesProblems } from '../phones.problems.js';
import { namedBy } from '../devices/named-by.js';
import type { OperationRow } from './operation.entity.js';
import type { OperationInput } from './operation.input.js';
import { operations } from './operation.repository.js';
import { whosePhone } from './whose-phone.js';

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
    if (before && before.bodyHash !== bodyHash) {
      const answer = { problem: told(phonesProblems.operationConflict({ key: id, receivedAt: before.receivedAt.toISOString() })) };
      // Under a name of its own, so that it is in the journal too and the office sees it.
      await operations.keep(tx, { ...rowOf(tx, deviceId, input), id: namedBy(`${id} ${bodyHash}`), verdict: 'conflict', answer });
      return { id, verdict: 'conflict', answer };
    }
    if (before && before.verdict !== 'refused') return before;
    const row = rowOf(tx, deviceId, input);
    return this.attempt(
      tx,
      id,
      async () => {
        const taken = { id, ...(await this.done(tx, { ...input, key: id }, tx.actor.personId)) };
        await operations.keep(tx, { ...row, ...taken });
        return taken;
      },
      (refused) => operations.keep(tx, { ...row, ...refused }),
    );
  }

  /** Once more, as somebody in the office asks for it, what was refused before. */
  again(tx: OrganizationTransaction, row: OperationRow): Promise<Taken> {
    const { id, kind, payloadVersion, body, savedAt } = row;
    return this.attempt(
      tx,
      id,
      async () => {
        const taken = { id, ...(await this.done(tx, { key: id, kind, payloadVersion, body, savedAt }, row.personId)) };
        await operations.answer(tx, taken);
        return taken;
      },
      (refused) => operations.answer(tx, refused),
    );
  }

  /** Does it, and says of another word of the same on whose phone and when that was saved. */
  private async done(tx: OrganizationTransaction, sent: Parameters<DoOperation['run']>[1], personId: string | null) {
    const did = await this.doing.run(tx, sent);
    const { before, other } = did;
    return answerOf(before && other ? { ...did, other: { ...other, ...(await whosePhone(tx, before, sent.key, personId)) } } : did);
  }

  /** Either everything of an operation is done and in the journal, or nothing of it and why. */
  private async attempt(
    tx: OrganizationTransaction,
    id: string,
    work: () => Promise<Taken>,
    keepRefused: (refused: Taken) => Promise<void>,
  ): Promise<Taken> {
    try {
      return await tx.attempt(work);
    } catch (thrown) {
      // That says nothing of the operation. Only the end of the whole transaction lets go what others wait for: the phone sends again.
      if (isPassingFault(thrown)) throw thrown;
      const refused: Taken = { id, verdict: 'refused', answer: { problem: told(asProblem(thrown)) } };
      await keepRefused(refused);
      return refused;
    }
  }
}

const answerOf = ({ verdict, other, problem }: DoneOperation): Pick<Taken, 'verdict' | 'answer'> => ({
  verdict,
  answer: { ...(other && { other }), ...(problem && { problem: told(problem) }) },
});

/** An operation as the journal keeps it, in numbers and letters that it can hold, but for what became of it. */
const rowOf = (tx: OrganizationTransaction, deviceId: string, input: OperationInput) => ({
  organizationId: tx.organizationId,
  deviceId,
  deviceSeq: Math.max(0, input.seq),
  kind: written(input.kind),
  payloadVersion: Math.max(1, input.payloadVersion),
  body: written(input.body),
  bodyHash: hashOf(input),
  savedAt: input.savedAt,
  personId: tx.actor.personId,
});

/** What a column of text or JSON cannot hold: a zero byte, and half of a character of two. */
const written = (text: string): string => Buffer.from(text.replaceAll('\u0000', '\\u0000')).toString();

const told = ({ code, message, details }: Problem) => ({
  code,
  message: written(message),
  details: cleaned(details) as Problem['details'],
});

/** The same with every text in it as the journal can hold it. */
function cleaned(value: unknown): unknown {
  if (typeof value === 'string') return written(value);
  if (Array.isArray(value)) return value.map(cleaned);
  if (typeof value !== 'object' || value === null || value instanceof Date) return value;
  return Object.fromEntries(Object.entries(value).map(([name, one]) => [written(name), cleaned(one)]));
}

const hashOf = ({ kind, payloadVersion, body }: OperationInput): string =>
  createHash('sha256').update(`${kind}\n${payloadVersion}\n${body}`).digest('hex');
