import { dayNumberOfDate, weekdayOfDayNumber } from '@rillbook/irrigation/calendar/local-date.js';
import type { PlanBreach } from '@rillbook/routing/judge/breaches-of-plan.js';
import { Reason } from '../../../../platform/graphql/reason.type.js';
import type { CrewRow } from '../../crews/crew.entity.js';
import { showCrew } from '../../crews/crew.type.js';
import type { PlanItem } from '../material/plan-item.js';
import { crewDayOf, restOfToday } from '../material/plan-input-of.js';
import { PlannedDay } from './month-plan.type.js';
import { type DayFacts, donePart, joined, plannedPart } from './part-of-day.js';

/** One crew's day as it stands, with the times that its order gives, and what of it does not fit. Today goes on from now, after what was done. */
export function showDay(crew: CrewRow, day: string, items: readonly PlanItem[], facts: DayFacts): PlannedDay {
  const { known, places, now } = facts;
  const number = dayNumberOfDate(day);
  const whole = crewDayOf(crew, number, places);
  const { breaches, ...times } = now?.day === day ? today(now.minute) : plannedPart(whole, items, facts);
  return Object.assign(new PlannedDay(), {
    ...times,
    id: whole.id,
    crew: showCrew(crew),
    day,
    works: crew.workingDays.includes(weekdayOfDayNumber(number) + 1),
    mostMinutes: Math.round(whole.mostBusyS / 60),
    says: breaches.map((breach) => sayBreach(breach, items)),
  });

  function today(minute: number) {
    const [done, rest] = [items.filter(({ visited }) => visited), items.filter(({ visited }) => !visited)];
    const left = restOfToday(known, whole, { places, minute });
    return joined(donePart(whole, done, facts), plannedPart(left, rest, facts));
  }
}

function sayBreach({ code, stopId, byS }: PlanBreach, items: readonly PlanItem[]): Reason {
  const item = items.find(({ id }) => id === stopId);
  const details = { stopId: item?.stopId ?? null, minutes: byS !== null && Number.isFinite(byS) ? Math.ceil(byS / 60) : null };
  return Object.assign(new Reason(), { code: item && code === 'notAllowed' ? whyNotAllowed(item) : code, details });
}

/** On its day a stop is not allowed for want of a position, a skill, or because its work was due before. */
const whyNotAllowed = (item: PlanItem): string =>
  item.orders.some(({ dueOn }) => dueOn !== null && item.place && dueOn < item.place.day) ? 'pastDue' : 'notAllowed';
