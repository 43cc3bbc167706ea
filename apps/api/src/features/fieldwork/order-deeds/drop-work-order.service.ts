import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { judgeValues, text } from '../../../platform/problems/judge-values.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { KeptRecords, VersionConflict } from '../../../platform/records/kept-records.js';
import { findingOfId } from '../../findings/finding.loader.js';
import { SettleFinding } from '../../findings/deciding/settle-finding.service.js';
import { LeaveStop } from '../day-planning/leave-stop.service.js';
import { holdWorkOrder } from '../orders/require-work-order.js';
import { WorkOrderRow } from '../orders/work-order.entity.js';
import { workOrders } from '../orders/work-order.repository.js';

/** Drops a work order, with why: it leaves its route, and a finding that no other work answers is open again. */
@Injectable()
export class DropWorkOrder {
  constructor(
    private readonly records: KeptRecords,
    private readonly leave: LeaveStop,
    private readonly settle: SettleFinding,
  ) {}

  async run(tx: OrganizationTransaction, id: string, version: number, why: string): Promise<WorkOrderRow | VersionConflict> {
    if (!why.trim()) throw platformProblems.valueRefused({ field: 'why', found: why, expected: 'the reason in words' });
    judgeValues({ why }, { why: text });
    const held = await holdWorkOrder(tx, this.records, id, version);
    if (held instanceof VersionConflict) return held;
    const dropped = await this.records.change(tx, WorkOrderRow, id, version, { state: 'dropped', leftNote: why.trim(), stopId: null });
    if (held.stopId) await this.leave.run(tx, held.stopId);
    if (held.findingId && !(await workOrders.hasOther(tx, held.findingId))) await this.reopen(tx, held.findingId);
    return dropped;
  }

  private async reopen(tx: OrganizationTransaction, findingId: string): Promise<void> {
    const finding = await findingOfId.of(tx).load(findingId);
    if (finding?.state === 'in work') await this.settle.reopen(tx, findingId, finding.version);
    findingOfId.of(tx).clear(findingId);
  }
}
