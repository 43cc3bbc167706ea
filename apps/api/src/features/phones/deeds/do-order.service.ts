import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Problem } from '../../../platform/problems/problem.js';
import { VersionConflict } from '../../../platform/records/kept-records.js';
import { isUuid } from '../../../platform/records/uuid.js';
import { CloseWorkOrder } from '../../fieldwork/order-deeds/close-work-order.service.js';
import { movedOrderDay, orderRead } from '../../fieldwork/orders/lists/moved-order.loader.js';
import { type WhoChanged, whoGaveOut, whoSetState } from '../../fieldwork/orders/lists/who-changed.loader.js';
import { workOrderOnceGiven } from '../../fieldwork/orders/work-order.loader.js';
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
      return await (input.done ? this.done(tx, input, savedAt) : this.left(tx, input, savedAt));
    } catch (problem) {
      if (!(problem instanceof Problem) || problem.code !== 'WORK_ORDER_ENDED') throw problem;
      return endedMeanwhile(tx, input.id, (problem.details as { state: string }).state);
    }
  }

  private async done(tx: OrganizationTransaction, input: OrderEnd, savedAt: Date): Promise<DoneOperation> {
    const before = await workOrderOnceGiven.of(tx).clear(input.id).load(input.id);
    const first = await this.closing.run(tx, input, savedAt);
    if (!(first instanceof VersionConflict)) return ended(tx, first);
    const second = await this.closing.run(tx, { ...input, version: first.version }, savedAt);
    if (before?.state === 'done')
      return {
        verdict: 'conflict',
        other: { doneNote: before.doneNote, by: first.changedBy },
        before: { kind: 'end-order', personId: null, at: before.doneAt, holds: [input.id] },
      };
    return ended(tx, second, first);
  }

  /** Where the office has given it another day meanwhile, that stands. */
  private async left(tx: OrganizationTransaction, input: OrderEnd, savedAt: Date): Promise<DoneOperation> {
    const key = orderRead(input);
    const day = isUuid(input.id) ? await movedOrderDay.of(tx).clear(key).load(key) : null;
    if (day && (await workOrderOnceGiven.of(tx).load(input.id)))
      return decided(input.id, await whoGaveOut.of(tx).clear(input.id).load(input.id), { state: 'given out', day });
    const first = await this.closing.run(tx, input, savedAt);
    if (!(first instanceof VersionConflict)) return ended(tx, first);
    return ended(tx, await this.closing.run(tx, { ...input, version: first.version }, savedAt), first);
  }
}

/** What somebody decided of an order meanwhile, with who it was; only what was told as done may have been told on a phone. */
function decided(
  id: string,
  who: WhoChanged | null,
  { doneAt, ...other }: { readonly state: string; readonly day?: string; readonly note?: string; readonly doneAt?: Date | null },
): DoneOperation {
  const { personId, by, at } = who ?? { personId: null, by: null, at: null };
  const where = doneAt ? { savedAt: doneAt, holds: [id] } : { id: null };
  return {
    verdict: 'conflict',
    other: { ...other, by },
    before: { kind: 'end-order', personId, at: doneAt ?? at, ...where },
    problem: phonesProblems.decidedMeanwhile({ what: 'The work order', state: other.state }),
  };
}

/** The order had ended: in which state, by whom, and with which note. */
async function endedMeanwhile(tx: OrganizationTransaction, id: string, state: string): Promise<DoneOperation> {
  const order = await workOrderOnceGiven.of(tx).clear(id).load(id);
  const isDone = state === 'done';
  const note = isDone ? order?.doneNote : order?.leftNote;
  const who = await whoSetState.of(tx).clear(id).load(id);
  return decided(id, who, { state, ...(note && { note }), ...(isDone && { doneAt: order?.doneAt ?? null }) });
}

/** How it ended, by what the order is now and what it was when somebody had changed it since the phone read it. */
async function ended(
  tx: OrganizationTransaction,
  now: { readonly id: string; readonly state: string } | VersionConflict,
  changed: VersionConflict | null = null,
): Promise<DoneOperation> {
  if (now instanceof VersionConflict) return { verdict: 'conflict', other: { changedBy: now.changedBy } };
  if (now.state === 'waiting for approval') return decided(now.id, await whoSetState.of(tx).load(now.id), { state: now.state });
  return changed ? { verdict: 'parallel', other: { changedBy: changed.changedBy } } : APPLIED;
}
