import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { KeptRecords, VersionConflict } from '../../../../platform/records/kept-records.js';
import { LeaveStop } from '../../day-planning/leave-stop.service.js';
import { PlaceStop } from '../../day-planning/place-stop.service.js';
import { fieldworkProblems } from '../../fieldwork.problems.js';
import { AssignWorkOrder } from '../../order-deeds/assign-work-order.service.js';
import { StopRow } from '../../routes/stop.entity.js';
import type { CrewAndDay, PlanItem } from '../material/plan-item.js';

/** Sends what is to be done at one property to a crew and day, or takes its day away: its work orders go along, a visit goes by itself. */
@Injectable()
export class SendItem {
  constructor(
    private readonly records: KeptRecords,
    private readonly assign: AssignWorkOrder,
    private readonly place: PlaceStop,
    private readonly leave: LeaveStop,
  ) {}

  /** @returns the stop that it is on now, or null where it has no day */
  async run(
    tx: OrganizationTransaction,
    item: Pick<PlanItem, 'propertyId' | 'stopId' | 'orders'>,
    to: CrewAndDay | null,
  ): Promise<StopRow | null> {
    for (const order of item.orders) {
      if (order.state === 'done') continue;
      const given = await this.assign.run(tx, order.id, order.version, to);
      if (given instanceof VersionConflict)
        throw fieldworkProblems.changedSinceRead({ thing: 'work order', id: order.id, version: given.version, changedBy: given.changedBy });
    }
    const stop = to && (await this.place.run(tx, { ...to, propertyId: item.propertyId }));
    if (item.stopId && item.stopId !== stop?.id) await this.leave.run(tx, item.stopId);
    return stop;
  }

  /** Locks a stop to its day, or lets it go. */
  async lock(tx: OrganizationTransaction, stop: StopRow, locked: boolean): Promise<StopRow> {
    const kept = await this.records.change(tx, StopRow, stop.id, stop.version, { locked });
    if (kept instanceof VersionConflict)
      throw fieldworkProblems.changedSinceRead({ thing: 'stop', id: stop.id, version: kept.version, changedBy: kept.changedBy });
    return kept;
  }
}
