import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { KeptRecords, VersionConflict } from '../../../platform/records/kept-records.js';
import { fieldworkProblems } from '../fieldwork.problems.js';
import { requireStop } from '../routes/require-stop.js';
import type { RouteRow } from '../routes/route.entity.js';
import { StopRow } from '../routes/stop.entity.js';
import { stops } from '../routes/stop.repository.js';

/** Moves a stop to another position in its day; the others make room. */
@Injectable()
export class MoveStop {
  constructor(private readonly records: KeptRecords) {}

  async run(tx: OrganizationTransaction, id: string, version: number, position: number): Promise<RouteRow> {
    const { stop, route } = await requireStop(tx, id);
    if (stop.retiredAt) throw platformProblems.notFound({ thing: 'stop', id });
    const day = await stops.ofRoutes(tx, [stop.routeId]);
    if (position < 1 || position > day.length)
      throw platformProblems.valueRefused({ field: 'position', found: position, expected: `a position from 1 to ${day.length}` });
    const moved = await this.records.change(tx, StopRow, id, version, { position });
    if (moved instanceof VersionConflict)
      throw fieldworkProblems.changedSinceRead({ thing: 'stop', id, version: moved.version, changedBy: moved.changedBy });
    const order = day.map((other) => other.id).filter((other) => other !== id);
    order.splice(position - 1, 0, id);
    await stops.number(tx, stop.routeId, order);
    return route;
  }
}
