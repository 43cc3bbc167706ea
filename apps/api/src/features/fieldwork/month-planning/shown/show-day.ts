import { dayNumberOfDate, weekdayOfDayNumber } from '@rillbook/irrigation/calendar/local-date.js';
import { breachesOfPlan, type PlanBreach } from '@rillbook/routing/judge/breaches-of-plan.js';
import type { PlanInput } from '@rillbook/routing/plan/plan-input.js';
import { timedRoute, type TimedStop } from '@rillbook/routing/plan/timed-route.js';
import { Reason } from '../../../../platform/graphql/reason.type.js';
import type { CrewRow } from '../../crews/crew.entity.js';
import { showCrew } from '../../crews/crew.type.js';
import { showStop } from '../../routes/stop.type.js';
import type { StopRow } from '../../routes/stop.entity.js';
import type { PlanItem, PlanMaterial } from '../material/plan-item.js';
import { crewDayOf, type Places } from '../material/plan-input-of.js';
import { stopOfItem } from '../material/stop-of-item.js';
import type { TravelTable } from '@rillbook/routing/travel/travel-table.js';
import { PlannedDay, PlannedStop } from './month-plan.type.js';

/** What a day is shown from. */
export interface DayFacts {
  readonly known: PlanMaterial;
  readonly places: Places;
  readonly travel: TravelTable;
  readonly rows: ReadonlyMap<string, StopRow>;
}

const minutes = (seconds: number): number => Math.round(seconds / 60);

/** One crew's day as it stands, with the times that its order gives, and what of it does not fit. */
export function showDay(crew: CrewRow, day: string, items: readonly PlanItem[], facts: DayFacts): PlannedDay {
  const { known, places, travel } = facts;
  const number = dayNumberOfDate(day);
  const crewDay = crewDayOf(crew, number, places);
  const stops = items.map((item) => ({ ...stopOfItem(item, places.ofProperty.get(item.propertyId) ?? null, known), firstDay: null }));
  const input: PlanInput = { travel, stops, crewDays: [crewDay], evenness: 0 };
  const route = items.map((_, at) => at);
  const timed = timedRoute(input, crewDay, route);
  const breaches = breachesOfPlan(input, { routes: [route], unplaced: [] }).filter(
    ({ stopId }) => !items.some(({ id, visited }) => visited && id === stopId),
  );
  return Object.assign(new PlannedDay(), {
    id: crewDay.id,
    crew: showCrew(crew),
    day,
    works: crew.workingDays.includes(weekdayOfDayNumber(number) + 1),
    stops: timed.stops.map((stop) => showTimed(stop, items[stop.stop]!, facts.rows)),
    leavesMinute: minutes(timed.leaveS),
    homeMinute: minutes(timed.homeS),
    driveMinutes: minutes(timed.driveS),
    driveMetres: timed.driveM,
    workMinutes: minutes(timed.workS),
    waitMinutes: minutes(timed.waitS),
    mostMinutes: minutes(crewDay.mostBusyS),
    says: breaches.map((breach) => sayBreach(breach, items)),
  });
}

function showTimed({ driveS, beginS, endS, lateS }: TimedStop, item: PlanItem, rows: ReadonlyMap<string, StopRow>): PlannedStop {
  return Object.assign(new PlannedStop(), {
    stop: showStop(rows.get(item.stopId!)!),
    driveMinutes: minutes(driveS),
    beginMinute: minutes(beginS),
    endMinute: minutes(endS),
    lateMinutes: Number.isFinite(lateS) ? minutes(lateS) : null,
    visited: item.visited,
    visitDueOn: item.visitDueOn,
  });
}

function sayBreach({ code, stopId, byS }: PlanBreach, items: readonly PlanItem[]): Reason {
  const item = items.find(({ id }) => id === stopId);
  const details = { stopId: item?.stopId ?? null, minutes: byS !== null && Number.isFinite(byS) ? Math.ceil(byS / 60) : null };
  return Object.assign(new Reason(), { code: item && code === 'notAllowed' ? whyNotAllowed(item) : code, details });
}

/** On its day a stop is not allowed for want of a position, a skill, or because its work was due before. */
const whyNotAllowed = (item: PlanItem): string =>
  item.orders.some(({ dueOn }) => dueOn !== null && item.place && dueOn < item.place.day) ? 'pastDue' : 'notAllowed';
