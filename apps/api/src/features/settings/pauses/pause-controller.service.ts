import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { Events } from '../../../platform/records/events.js';
import { requireController } from '../require-controller.js';
import { PauseChanged } from '../settings-recorded.event.js';
import type { RainPauseRow } from './rain-pause.entity.js';
import { pauses } from './rain-pause.repository.js';

/** Stops a controller for a time. The same pause sent twice is one. */
@Injectable()
export class PauseController {
  constructor(private readonly events: Events) {}

  async run(tx: OrganizationTransaction, controllerId: string, from: Date, until: Date | null): Promise<RainPauseRow> {
    const controller = await requireController(tx, controllerId);
    if (until && until <= from)
      throw platformProblems.valueRefused({ field: 'until', found: until.toISOString(), expected: `a time after ${from.toISOString()}` });
    const isNew = await pauses.insert(tx, { controllerId: controller.id, pausedFrom: from, pausedUntil: until, typed: {} });
    const kept = (await pauses.at(tx, controller.id, from))!;
    if (isNew) await this.events.emit(tx, new PauseChanged(controller.id));
    else refuseOtherEnd(kept, until);
    return kept;
  }
}

function refuseOtherEnd({ pausedUntil }: RainPauseRow, until: Date | null): void {
  const [kept, found] = [pausedUntil, until].map((end) => end?.toISOString() ?? null);
  if (kept === found) return;
  throw platformProblems.valueRefused({
    field: 'until',
    found,
    expected: `${kept ?? 'no end'}, for the pause from that time is kept so; end that pause instead`,
  });
}
