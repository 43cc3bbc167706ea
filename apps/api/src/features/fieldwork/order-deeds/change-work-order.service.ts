import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { KeptRecords, VersionConflict } from '../../../platform/records/kept-records.js';
import { LeaveStop } from '../day-planning/leave-stop.service.js';
import { notToExceedOfProperty } from '../orders/not-to-exceed.loader.js';
import { holdWorkOrder } from '../orders/require-work-order.js';
import { exceeds, leastCost } from '../orders/work-order-cost.js';
import { WorkOrderRow } from '../orders/work-order.entity.js';
import type { WorkOrderInput } from '../orders/work-order.input.js';
import { type OrderValues, orderValues } from './order-values.js';

/** Changes what is said of a work order; one that now costs more than was approved waits, off its route; one of which an offer is wanted waits on. */
@Injectable()
export class ChangeWorkOrder {
  constructor(
    private readonly records: KeptRecords,
    private readonly leave: LeaveStop,
  ) {}

  async run(tx: OrganizationTransaction, id: string, version: number, input: WorkOrderInput): Promise<WorkOrderRow | VersionConflict> {
    const held = await holdWorkOrder(tx, this.records, id, version);
    if (held instanceof VersionConflict) return held;
    if (input.propertyId !== held.propertyId)
      throw platformProblems.valueRefused({
        field: 'propertyId',
        found: input.propertyId,
        expected: `the property it is on, ${held.propertyId}; make a new work order for another one`,
      });
    if (input.findingId && input.findingId !== held.findingId)
      throw platformProblems.valueRefused({ field: 'findingId', found: input.findingId, expected: 'the finding it was made for' });
    const values = await orderValues(tx, input, null);
    const limit = await notToExceedOfProperty.of(tx).load(held.propertyId);
    const waits = mustWait(held, values, limit);
    const changed = await this.records.change(tx, WorkOrderRow, id, version, {
      ...values,
      wordsOf: values.what === held.what ? held.wordsOf : null,
      ...(waits
        ? { state: 'waiting for approval', approvedBy: null, approvedAt: null, stopId: null }
        : { state: held.state === 'waiting for approval' ? 'open' : held.state }),
    });
    if (waits && held.stopId) await this.leave.run(tx, held.stopId);
    return changed;
  }
}

/** Whether it waits for approval with its new values: an offer for the client's word on its price, the rest where it exceeds their limit. */
const mustWait = (held: WorkOrderRow, values: OrderValues, limit: number | null): boolean =>
  (held.isOffer || exceeds(values, limit)) && !wasApproved(held, values);

/** An approval covers what costs no more than what was approved. */
const wasApproved = (held: WorkOrderRow, values: OrderValues): boolean => held.approvedAt !== null && leastCost(values) <= leastCost(held);
