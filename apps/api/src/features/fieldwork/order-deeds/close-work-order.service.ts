import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { judgeValues, text } from '../../../platform/problems/judge-values.js';
import { KeptRecords, VersionConflict } from '../../../platform/records/kept-records.js';
import { findingOfId } from '../../findings/finding.loader.js';
import { SettleFinding } from '../../findings/deciding/settle-finding.service.js';
import { holdWorkOrder, requireWorkOrder, stillWaits } from '../orders/require-work-order.js';
import { WorkOrderRow } from '../orders/work-order.entity.js';
import type { CloseOrderInput } from '../orders/work-order.input.js';
import { PauseAsOrdered } from '../planned-settings/pause-as-ordered.service.js';
import { saidAt } from '../visits/deeds/require-possible-time.js';

/**
 * Closes a work order for the crew: done, or left for another day (open again, its note kept, the stop where it was left still named).
 * A phone may send the same twice: asked again for the state it already has, it is as it is. Told as done a second time in other words, the
 * later words stand.
 */
@Injectable()
export class CloseWorkOrder {
  constructor(
    private readonly records: KeptRecords,
    private readonly settle: SettleFinding,
    private readonly pause: PauseAsOrdered,
  ) {}

  /**
   * @param savedAt - When the phone kept it: that is when it was done. A phone may also tell of what is another crew's by now: hands did it.
   * @returns the work order; still waiting for approval if it may not be done yet
   */
  async run(tx: OrganizationTransaction, input: CloseOrderInput, savedAt?: Date): Promise<WorkOrderRow | VersionConflict> {
    judgeValues(input, { note: text });
    const note = input.note?.trim() || null;
    const present = await requireWorkOrder(tx, input.id, Boolean(savedAt));
    if (input.done && present.state === 'done') return this.doneAgain(tx, present, { ...input, note });
    if (isLeft(present, input.done, note)) return present;
    const held = await holdWorkOrder(tx, this.records, input.id, input.version, Boolean(savedAt));
    if (held instanceof VersionConflict || (await stillWaits(tx, held))) return held;
    return input.done
      ? this.done(tx, held, { note, resolvesFinding: input.resolvesFinding ?? false, at: await saidAt(tx, savedAt) })
      : this.records.change(tx, WorkOrderRow, held.id, held.version, { state: 'open', leftNote: note });
  }

  private async done(
    tx: OrganizationTransaction,
    held: WorkOrderRow,
    { note, resolvesFinding, at }: { readonly note: string | null; readonly resolvesFinding: boolean; readonly at: Date },
  ): Promise<WorkOrderRow | VersionConflict> {
    const closed = await this.records.change(tx, WorkOrderRow, held.id, held.version, { state: 'done', doneNote: note, doneAt: at });
    if (!(closed instanceof VersionConflict)) await this.pause.run(tx, closed);
    if (resolvesFinding && held.findingId) await this.resolve(tx, held.findingId, note ?? (held.what || held.kind));
    return closed;
  }

  /** What it does not tell of stays as it was. */
  private async doneAgain(
    tx: OrganizationTransaction,
    present: WorkOrderRow,
    input: CloseOrderInput,
  ): Promise<WorkOrderRow | VersionConflict> {
    const { version, note, resolvesFinding } = input;
    const isMore = note && note !== present.doneNote;
    const told = isMore ? await this.records.change(tx, WorkOrderRow, present.id, version, { doneNote: note }) : present;
    if (told instanceof VersionConflict) return told;
    if (resolvesFinding && told.findingId) await this.resolve(tx, told.findingId, told.doneNote ?? (told.what || told.kind));
    return told;
  }

  /** What was done is what was found, unless somebody has decided otherwise. */
  private async resolve(tx: OrganizationTransaction, findingId: string, note: string): Promise<void> {
    const finding = await findingOfId.of(tx).load(findingId);
    if (finding?.state === 'open' || finding?.state === 'in work') await this.settle.resolve(tx, findingId, { with: note });
    findingOfId.of(tx).clear(findingId);
  }
}

const isLeft = (order: WorkOrderRow, done: boolean, note: string | null): boolean =>
  !done && order.state === 'open' && order.stopId !== null && order.leftNote === note;
