import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { judgeValues, text } from '../../../platform/problems/judge-values.js';
import { KeptRecords, VersionConflict } from '../../../platform/records/kept-records.js';
import { findingOfId } from '../../findings/finding.loader.js';
import { SettleFinding } from '../../findings/deciding/settle-finding.service.js';
import { holdWorkOrder, requireWorkOrder, stillWaits } from '../orders/require-work-order.js';
import { WorkOrderRow } from '../orders/work-order.entity.js';
import type { CloseOrderInput } from '../orders/work-order.input.js';
import { nowIn } from '../organization-clock.js';
import { PauseAsOrdered } from '../planned-settings/pause-as-ordered.service.js';

/**
 * Closes a work order for the crew: done, or left for another day (open again, its note kept, the stop where it was left still named).
 * A phone may send the same twice: asked again for the state it already has, it is as it is.
 */
@Injectable()
export class CloseWorkOrder {
  constructor(
    private readonly records: KeptRecords,
    private readonly settle: SettleFinding,
    private readonly pause: PauseAsOrdered,
  ) {}

  /** @returns the work order; still waiting for approval if it may not be done yet */
  async run(tx: OrganizationTransaction, input: CloseOrderInput): Promise<WorkOrderRow | VersionConflict> {
    judgeValues(input, { note: text });
    const note = input.note?.trim() || null;
    const present = await requireWorkOrder(tx, input.id);
    if (isClosed(present, input.done, note)) return present;
    const held = await holdWorkOrder(tx, this.records, input.id, input.version);
    if (held instanceof VersionConflict || (await stillWaits(tx, held))) return held;
    return input.done
      ? this.done(tx, held, note, input.resolvesFinding ?? false)
      : this.records.change(tx, WorkOrderRow, held.id, held.version, { state: 'open', leftNote: note });
  }

  private async done(
    tx: OrganizationTransaction,
    held: WorkOrderRow,
    note: string | null,
    resolvesFinding: boolean,
  ): Promise<WorkOrderRow | VersionConflict> {
    const closed = await this.records.change(tx, WorkOrderRow, held.id, held.version, {
      state: 'done',
      doneNote: note,
      doneAt: await nowIn(tx),
    });
    if (!(closed instanceof VersionConflict)) await this.pause.run(tx, closed);
    if (resolvesFinding && held.findingId) await this.resolve(tx, held.findingId, note ?? (held.what || held.kind));
    return closed;
  }

  /** What was done is what was found, unless somebody has decided otherwise. */
  private async resolve(tx: OrganizationTransaction, findingId: string, note: string): Promise<void> {
    const finding = await findingOfId.of(tx).load(findingId);
    if (finding?.state === 'open' || finding?.state === 'in work') await this.settle.resolve(tx, findingId, { with: note });
    findingOfId.of(tx).clear(findingId);
  }
}

const isClosed = (order: WorkOrderRow, done: boolean, note: string | null): boolean =>
  done ? order.state === 'done' : order.state === 'open' && order.stopId !== null && order.leftNote === note;
