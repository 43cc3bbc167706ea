import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { pausesOfController } from '../../settings/pauses/pauses-of-controller.loader.js';
import { PauseController } from '../../settings/pauses/pause-controller.service.js';
import type { WorkOrderRow } from '../orders/work-order.entity.js';
import { visitOfStop } from '../visits/visit.loader.js';

/** Keeps the rain pause that a crew has set as it was ordered. */
@Injectable()
export class PauseAsOrdered {
  constructor(private readonly pause: PauseController) {}

  /** From when the crew came, which a phone without signal tells later; nothing is kept where the pause was over by then. */
  async run(tx: OrganizationTransaction, { controllerId, pauseUntil, stopId, doneAt }: WorkOrderRow): Promise<void> {
    if (!controllerId || !pauseUntil || !doneAt) return;
    const visit = stopId ? await visitOfStop.of(tx).load(stopId) : null;
    const from = visit && visit.arrivedAt < doneAt ? visit.arrivedAt : doneAt;
    if (from >= pauseUntil) return;
    await this.pause.run(tx, controllerId, from, pauseUntil);
    pausesOfController.of(tx).clear(controllerId);
  }
}
