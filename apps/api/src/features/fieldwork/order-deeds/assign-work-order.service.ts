import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { KeptRecords, VersionConflict } from '../../../platform/records/kept-records.js';
import { crewInScope } from '../crews/crew-scope.js';
import { crewOfId } from '../crews/crew.loader.js';
import { LeaveStop } from '../day-planning/leave-stop.service.js';
import { PlaceStop } from '../day-planning/place-stop.service.js';
import { holdWorkOrder, stillWaits } from '../orders/require-work-order.js';
import { WorkOrderRow } from '../orders/work-order.entity.js';

/** Who does it, and when. */
export interface CrewAndDay {
  readonly crewId: string;
  readonly day: string;
}

/** Gives a work order to a crew and a day, or takes it back. One that waits for approval is given to nobody. */
@Injectable()
export class AssignWorkOrder {
  constructor(
    private readonly records: KeptRecords,
    private readonly place: PlaceStop,
    private readonly leave: LeaveStop,
  ) {}

  /** @returns the work order; still waiting for approval if it may not be given out */
  async run(tx: OrganizationTransaction, id: string, version: number, to: CrewAndDay | null): Promise<WorkOrderRow | VersionConflict> {
    const held = await holdWorkOrder(tx, this.records, id, version);
    if (held instanceof VersionConflict) return held;
    if (to) await this.requireCrew(tx, to.crewId);
    if (await stillWaits(tx, held)) return held;
    const stop = to && (await this.place.run(tx, { ...to, propertyId: held.propertyId }));
    const given = await this.records.change(
      tx,
      WorkOrderRow,
      id,
      version,
      stop ? { stopId: stop.id, state: 'given out' } : { stopId: null, state: 'open' },
    );
    if (held.stopId && held.stopId !== stop?.id) await this.leave.run(tx, held.stopId);
    return given;
  }

  private async requireCrew(tx: OrganizationTransaction, id: string): Promise<void> {
    const crew = (await crewInScope(tx, id)) ? await crewOfId.of(tx).load(id) : null;
    if (!crew || crew.retiredAt) throw platformProblems.notFound({ thing: 'crew', id });
  }
}
