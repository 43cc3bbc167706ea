import { Injectable } from '@nestjs/common';
import { dateOfDayNumber, daysOfMonth, weekdayOfDayNumber } from '@rillbook/irrigation/calendar/local-date.js';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { Reason } from '../../../../platform/graphql/reason.type.js';
import { propertyOfId } from '../../../portfolio/properties/property.loader.js';
import { showProperty } from '../../../portfolio/properties/property.type.js';
import { showCrew } from '../../crews/crew.type.js';
import { workOrders } from '../../orders/work-order.repository.js';
import { showWorkOrder } from '../../orders/work-order.type.js';
import { minuteIn, todayIn } from '../../organization-clock.js';
import { stops } from '../../routes/stop.repository.js';
import { GatherMaterial } from '../material/gather-material.service.js';
import type { PlanItem, PlanMaterial } from '../material/plan-item.js';
import { crewDayId, placesOf } from '../material/plan-input-of.js';
import { minutesOf } from '../material/stop-of-item.js';
import { monthPlans } from '../runs/month-plan.repository.js';
import { standingReasons } from '../runs/standing-reasons.js';
import type { MonthPlanRow } from '../runs/month-plan.entity.js';
import { TravelTimes } from '../travel/travel-times.service.js';
import { CrewPaceShown, MonthPlan, PlanRun, UnplacedStop } from './month-plan.type.js';
import { showDay } from './show-day.js';

/** Shows a month as it stands: each crew's days with their times, and what has no day. */
@Injectable()
export class ShowMonth {
  constructor(
    private readonly gather: GatherMaterial,
    private readonly travel: TravelTimes,
  ) {}

  async run(tx: OrganizationTransaction, month: string): Promise<MonthPlan> {
    const { firstDay, days } = daysOfMonth(month);
    const known = await this.gather.run(tx, dateOfDayNumber(firstDay), dateOfDayNumber(firstDay + days - 1));
    const places = placesOf(known);
    const { table, basis } = await this.travel.run(places.positions);
    const ids = known.items.flatMap(({ stopId }) => (stopId === null ? [] : [stopId]));
    const rows = new Map((await stops.ofIds(tx, ids)).map((row) => [row.id, row]));
    const latest = await monthPlans.latest(tx, month);
    const now = { day: await todayIn(tx), minute: await minuteIn(tx) };
    return Object.assign(new MonthPlan(), {
      month,
      today: now.day,
      days: daysShown(known).map(({ crew, day, items }) => showDay(crew, day, items, { known, places, travel: table, rows, now })),
      unplaced: await unplacedOf(tx, known, latest),
      travel: basis,
      pace: known.crews.map((crew) => Object.assign(new CrewPaceShown(), { crew: showCrew(crew), ...known.pace.get(crew.id)! })),
      latest: latest && showRun(latest),
    });
  }
}

/** A planning as people see it. */
export const showRun = ({ id, madeAt, undoneAt, moved, unplaced }: MonthPlanRow): PlanRun =>
  Object.assign(new PlanRun(), { id, madeAt, undoneAt, moved, unplaced: unplaced.filter(({ isEarlier = false }) => !isEarlier).length });

function daysShown(known: PlanMaterial) {
  const { firstDay, days } = daysOfMonth(known.from.slice(0, 7));
  const numbers = Array.from({ length: days }, (_, at) => firstDay + at);
  return known.crews.flatMap((crew) =>
    numbers.flatMap((number) => {
      const day = dateOfDayNumber(number);
      const name = crewDayId({ crewId: crew.id, day });
      const items = known.items.filter(({ place }) => place !== null && crewDayId(place) === name);
      return items.length > 0 || crew.workingDays.includes(weekdayOfDayNumber(number) + 1) ? [{ crew, day, items }] : [];
    }),
  );
}

/** What has no day, with the reason that the last plan found. A stop that was missed in an earlier month has no day in this one. */
async function unplacedOf(tx: OrganizationTransaction, known: PlanMaterial, latest: MonthPlanRow | null): Promise<UnplacedStop[]> {
  const waiting = known.items.filter(({ place }) => place === null || place.day < known.from);
  const rows = await workOrders.seen(tx, { ids: waiting.flatMap(({ orders }) => orders.map(({ id }) => id)) });
  const orders = new Map(rows.map((row) => [row.id, showWorkOrder(row)]));
  const properties = await propertyOfId.of(tx).loadMany(waiting.map(({ propertyId }) => propertyId));
  return waiting.flatMap((item, at) => {
    const property = properties[at];
    if (!property || property instanceof Error) return [];
    return [
      Object.assign(new UnplacedStop(), {
        id: item.id,
        property: showProperty(property),
        orders: item.orders.flatMap(({ id }) => orders.get(id) ?? []),
        visitDueOn: item.visitDueOn,
        minutes: Math.round(minutesOf(item, known)),
        reason: reasonOf(item, latest),
      }),
    ];
  });
}

function reasonOf(item: PlanItem, latest: MonthPlanRow | null): Reason {
  const found = standingReasons(latest).find(({ itemId }) => itemId === item.id);
  const missed = item.place ? { code: 'missed', details: { day: item.place.day } } : { code: 'notPlannedYet', details: {} };
  return Object.assign(new Reason(), found ? { code: found.code, details: found.details } : missed);
}
