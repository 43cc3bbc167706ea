import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { KeptRecords, VersionConflict } from '../../../../platform/records/kept-records.js';
import { fieldworkProblems } from '../../fieldwork.problems.js';
import { holdWorkOrder } from '../../orders/require-work-order.js';
import { costOf } from '../../orders/work-order-cost.js';
import { WorkOrderRow } from '../../orders/work-order.entity.js';
import { nowIn } from '../../organization-clock.js';

/** Approves what a work order costs: it is open from then on. What has no price yet is approved by nobody. */
@Injectable()
export class ApproveWorkOrder {
  constructor(private readonly records: KeptRecords) {}

  async run(tx: OrganizationTransaction, id: string, version: number): Promise<WorkOrderRow | VersionConflict> {
    const held = await holdWorkOrder(tx, this.records, id, version);
    if (held instanceof VersionConflict) return held;
    if (held.state !== 'waiting for approval') throw fieldworkProblems.notWaiting({ workOrderId: id, state: held.state });
    if (costOf(held) === null) throw fieldworkProblems.notPriced({ workOrderId: id });
    return this.records.change(tx, WorkOrderRow, id, version, {
      state: 'open',
      approvedBy: tx.actor.personId,
      approvedAt: await nowIn(tx),
    });
  }
}
