import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { platformProblems } from '../../../../platform/problems/platform.problems.js';
import { KeptRecords, type VersionConflict } from '../../../../platform/records/kept-records.js';
import { propertyOfId } from '../../../portfolio/properties/property.loader.js';
import { fieldworkProblems } from '../../fieldwork.problems.js';
import { WorkOrderRow } from '../../orders/work-order.entity.js';
import { nowIn } from '../../organization-clock.js';

/** A client approves what waits for them on one of their properties: it is open from then on. */
@Injectable()
export class ApproveAsClient {
  constructor(private readonly records: KeptRecords) {}

  async run(tx: OrganizationTransaction, id: string, version: number): Promise<WorkOrderRow | VersionConflict> {
    const held = await this.records.change(tx, WorkOrderRow, id, version, {});
    if (!(held instanceof WorkOrderRow)) return held;
    const property = await propertyOfId.of(tx).load(held.propertyId);
    if (tx.actor.clientId === null || property?.clientId !== tx.actor.clientId)
      throw platformProblems.notFound({ thing: 'work order', id });
    if (held.state !== 'waiting for approval') throw fieldworkProblems.notWaiting({ workOrderId: id, state: held.state });
    const approved = { state: 'open' as const, approvedBy: tx.actor.personId, approvedAt: await nowIn(tx) };
    return this.records.change(tx, WorkOrderRow, id, version, approved);
  }
}
