import { Injectable } from '@nestjs/common';
import { dateOfDayNumber, daysOfMonth } from '@rillbook/irrigation/calendar/local-date.js';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { platformProblems } from '../../../../platform/problems/platform.problems.js';
import { requireComingDay } from '../../crews/crew-and-day.js';
import { crewOfId } from '../../crews/crew.loader.js';
import { fieldworkProblems } from '../../fieldwork.problems.js';
import type { StopRow } from '../../routes/stop.entity.js';
import { GatherMaterial } from '../material/gather-material.service.js';
import { monthPlans } from '../runs/month-plan.repository.js';
import { SendItem } from './send-item.service.js';

/** Where something without a day goes, by hand. */
export interface Placed {
  readonly crewId: string;
  readonly day: string;
  readonly locked: boolean;
}

/** Gives open work or a due visit a crew and a day by hand; it is the last stop of that day. While a month is planned it waits. */
@Injectable()
export class PlaceItem {
  constructor(
    private readonly gather: GatherMaterial,
    private readonly send: SendItem,
  ) {}

  async run(tx: OrganizationTransaction, month: string, itemId: string, to: Placed): Promise<StopRow> {
    await monthPlans.oneAtATime(tx);
    const crew = await crewOfId.of(tx).load(to.crewId);
    if (!crew || crew.retiredAt) throw platformProblems.notFound({ thing: 'crew', id: to.crewId });
    await requireComingDay(tx, to.day);
    const { firstDay, days } = daysOfMonth(month);
    const { items } = await this.gather.run(tx, dateOfDayNumber(firstDay), dateOfDayNumber(firstDay + days - 1));
    const item = items.find(({ id, place }) => id === itemId && (place === null || place.day < dateOfDayNumber(firstDay)));
    if (!item) throw fieldworkProblems.nothingToPlace({ itemId });
    const stop = (await this.send.run(tx, item, { crewId: to.crewId, day: to.day }))!;
    return stop.locked === to.locked ? stop : this.send.lock(tx, stop, to.locked);
  }
}
