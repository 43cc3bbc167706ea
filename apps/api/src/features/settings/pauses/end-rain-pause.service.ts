import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { Events } from '../../../platform/records/events.js';
import { isUuid } from '../../../platform/records/uuid.js';
import { controllerInScope } from '../require-controller.js';
import { PauseChanged } from '../settings-recorded.event.js';
import type { RainPauseRow } from './rain-pause.entity.js';
import { pauses } from './rain-pause.repository.js';

/** Says when a rain pause ends. */
@Injectable()
export class EndRainPause {
  constructor(private readonly events: Events) {}

  async run(tx: OrganizationTransaction, id: string, until: Date): Promise<RainPauseRow> {
    const pause = isUuid(id) ? await pauses.locked(tx, id) : null;
    if (!pause || !(await controllerInScope(tx, pause.controllerId))) throw platformProblems.notFound({ thing: 'rain pause', id });
    if (until <= pause.pausedFrom)
      throw platformProblems.valueRefused({
        field: 'until',
        found: until.toISOString(),
        expected: `a time after ${pause.pausedFrom.toISOString()}, when the pause begins`,
      });
    if (pause.pausedUntil?.getTime() === until.getTime()) return pause;
    await pauses.endAt(tx, id, until);
    await this.events.emit(tx, new PauseChanged(pause.controllerId));
    return { ...pause, pausedUntil: until };
  }
}
