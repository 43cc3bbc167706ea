import { Injectable } from '@nestjs/common';
import { dateOfDayNumber, dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { platformProblems } from '../../../../platform/problems/platform.problems.js';
import { crewOfId } from '../../crews/crew.loader.js';
import { minuteIn, todayIn } from '../../organization-clock.js';
import { GatherMaterial } from '../material/gather-material.service.js';
import type { MonthPlanRow } from '../runs/month-plan.entity.js';
import { plannedBefore } from '../runs/planned-before.js';
import { PlanMonth } from './plan-month.service.js';

/** How far stops of a broken day may be put off. [d] */
const PUT_OFF_DAYS = 7;

const LAST_MINUTE = 1439;

interface Wish {
  readonly crewId: string;
  /** the minute of the day; now where it is null */
  readonly from: number | null;
  /** made by the device */
  readonly id: string | null;
}

/**
 * Plans what is left of a crew's day that did not go as planned: its stops that nobody has visited stay with the crew, go to another one today,
 * or go to the next days. Nothing else moves.
 */
@Injectable()
export class ReplanDay {
  constructor(
    private readonly gather: GatherMaterial,
    private readonly month: PlanMonth,
  ) {}

  async run(tx: OrganizationTransaction, { crewId, from, id }: Wish): Promise<MonthPlanRow> {
    const day = await todayIn(tx);
    const month = day.slice(0, 7);
    const made = await plannedBefore(tx, id, month);
    if (made) return made;
    const minute = from ?? (await minuteIn(tx));
    const crew = await crewOfId.of(tx).load(crewId);
    if (!crew || crew.retiredAt) throw platformProblems.notFound({ thing: 'crew', id: crewId });
    if (minute < 0 || minute > LAST_MINUTE)
      throw platformProblems.valueRefused({ field: 'minute', found: minute, expected: `0 to ${LAST_MINUTE}` });
    const known = await this.gather.run(tx, day, dateOfDayNumber(dayNumberOfDate(day) + PUT_OFF_DAYS));
    const isOfThatDay = ({ place }: { readonly place: { readonly crewId: string; readonly day: string } | null }): boolean =>
      place?.crewId === crewId && place.day === day;
    const items = known.items.filter((item) => item.place !== null && item.place.day >= day);
    return this.month.plan(
      tx,
      { ...known, items },
      { isFree: (item) => isOfThatDay(item) && !item.locked, now: { day, minute } },
      { month, id },
    );
  }
}
