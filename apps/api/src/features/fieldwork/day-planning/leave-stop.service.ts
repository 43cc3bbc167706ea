import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { KeptRecords } from '../../../platform/records/kept-records.js';
import { StopRow } from '../routes/stop.entity.js';
import { stops } from '../routes/stop.repository.js';

/** Takes a stop off its route when nothing is left to do or to remember there; those after it move up. */
@Injectable()
export class LeaveStop {
  constructor(private readonly records: KeptRecords) {}

  async run(tx: OrganizationTransaction, stopId: string): Promise<void> {
    const [stop] = await stops.ofIds(tx, [stopId]);
    if (!stop || stop.retiredAt || (await stops.isNeeded(tx, stopId))) return;
    await this.records.retire(tx, StopRow, stop.id, stop.version);
    const rest = await stops.ofRoutes(tx, [stop.routeId]);
    await stops.number(
      tx,
      stop.routeId,
      rest.map(({ id }) => id),
    );
  }
}
