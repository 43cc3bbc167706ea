import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Problem } from '../../../platform/problems/problem.js';
import { VersionConflict } from '../../../platform/records/kept-records.js';
import { isUuid } from '../../../platform/records/uuid.js';
import { CloseWorkOrder } from '../../fieldwork/order-deeds/close-work-order.service.js';
import { movedOrderDay, orderRead } from '../../fieldwork/orders/lists/moved-order.loader.js';
import { workOrderOfId } from '../../fieldwork/orders/work-order.loader.js';
import { phonesProblems } from '../phones.problems.js';
import type { Body } from './body.js';
import { APPLIED, type DoneOperation } from './done-operation.js';

/** What a phone says of an order's end. */
interface OrderEnd {
  readonly id: string;
  readonly version: number;
  readonly done: boolean;
  readonly note: string | null;
  readonly resolvesFinding: boolean;
}

/** What the crew says of a work order, also when somebody changed the order meanwhile: what hands did is done. */
@Injectable()
export class DoOrder {
  constructor(private readonly closing: CloseWorkOrder) {}

  async end(tx: OrganizationTransaction, _: string, body: Body, savedAt: Date): Promise<DoneOperation> {
    const input = {
      id: body.text('workOrderId'),
      version: body.number('version'),
      done: body.flag('done'),
      note: body.textOrNull('note'),
      resolvesFinding: body.flag('resolvesFinding'),
    };
    try {
      return await (input.done ? this.done(tx, input, savedAt) : this.left(tx, input));
    } catch (problem) {
      if (!(problem instanceof Problem) || problem.code !== 'WORK_ORDER_ENDED') throw problem;
      const { state } = problem.details as { state: string };
      return { verdict: 'conflict', other: { state }, problem: meanwhile(state) };
    }
  }

  private async done(tx: OrganizationTransaction, input: OrderEnd, savedAt: Date): Promise<DoneOperation> {
    const before = await workOrderOfId.of(tx).clear(input.id).load(input.id);
    const first = await this.closing.run(tx, input, savedAt);
    if (!(first instanceof VersionConflict)) return ended(first);
    const second = await this.closing.run(tx, { ...input, version: first.version }, savedAt);
    if (before?.state === 'done')
      return {
        verdict: 'conflict',
        other: { doneNote: before.doneNote, by: first.changedBy },
        before: { kind: 'end-order', personId: null, at: before.doneAt, holds: [input.id] },
      };
    return ended(second, first);
  }

  /** Where the office has given it another day meanwhile, that stands. */
  private async left(tx: OrganizationTransaction, input: OrderEnd): Promise<DoneOperation> {
    const key = orderRead(input);
    const day = isUuid(input.id) ? await movedOrderDay.of(tx).clear(key).load(key) : null;
    if (day && (await workOrderOfId.of(tx).load(input.id)))
      return { verdict: 'conflict', other: { state: 'given out', day }, problem: meanwhile('given out') };
    const first = await this.closing.run(tx, input);
    if (!(first instanceof VersionConflict)) return ended(first);
    return ended(await this.closing.run(tx, { ...input, version: first.version }), first);
  }
}

const meanwhile = (state: string) => phonesProblems.decidedMeanwhile({ what: 'The work order', state });

/** How it ended, by what the order is now and what it was when somebody had changed it since the phone read it. */
function ended(now: { readonly state: string } | VersionConflict, changed: VersionConflict | null = null): DoneOperation {
  if (now instanceof VersionConflict) return { verdict: 'conflict', other: { changedBy: now.changedBy } };
  if (now.state === 'waiting for approval') return { verdict: 'conflict', problem: meanwhile(now.state) };
  return changed ? { verdict: 'parallel', other: { changedBy: changed.changedBy } } : APPLIED;
}
