import { dayNumberOfDate, weekdayOfDayNumber } from '@rillbook/irrigation/calendar/local-date.js';
import { openWindows } from '@rillbook/routing/day/open-windows.js';
import type { PlanStop } from '@rillbook/routing/plan/plan-input.js';
import { ESTIMATE_MINUTES, type WorkOrderKind } from '../../orders/work-order-kinds.js';
import type { PlanItem, PlanMaterial } from './plan-item.js';

const HOUR_S = 3600;

/** How long a visit without other work takes where nobody says: common practice. [min] */
const VISIT_MINUTES = 30;

/** What leaving a kind of work for another month is worth in driving time: what runs or leaks comes first. [h] */
const WORTH_HOURS: Readonly<Record<WorkOrderKind, number>> = { repair: 30, adjust: 20, inspect: 16, read: 8, 'plant care': 12, upgrade: 8 };
const VISIT_WORTH_HOURS = 10;
/** What is overdue is worth this much more. */
const OVERDUE_WORTH = 3;

/** What each day off the wanted one costs, as driving: new work soon, visits when due, what has a day stays there. [s] */
const LATER_S = 90;
const OFF_DUE_S = 120;
const MOVED_S = 180;

/** The share of the interval that a visit may come early or late. */
const VISIT_SLACK = 0.4;

/** How long the work of an item takes, before a crew's own pace: each order's estimate, or the visit's own minutes. [min] */
export function minutesOf(item: PlanItem, { properties }: Pick<PlanMaterial, 'properties'>): number {
  if (item.orders.length === 0) return properties.get(item.propertyId)?.visitMinutes ?? VISIT_MINUTES;
  return item.orders.reduce((sum, { minutes, kind }) => sum + (minutes ?? ESTIMATE_MINUTES[kind]), 0);
}

/** An item as the solver takes it. `place` is its row of the travel table, null where the position is not known. */
export function stopOfItem(item: PlanItem, place: number | null, known: PlanMaterial): PlanStop {
  const property = known.properties.get(item.propertyId);
  const seconds = 60 * minutesOf(item, known);
  return {
    id: item.id,
    place,
    serviceS: Object.fromEntries(known.crews.map(({ id }) => [id, seconds * (known.pace.get(id)?.factor ?? 1)])),
    load: 1,
    skills: [...new Set([...item.orders.flatMap(({ skills }) => skills), ...(property?.skills ?? [])])],
    windows: windowsOf(item, known),
    wholeWorkInside: true,
    ...daysOf(item, known),
    leaveOutS: HOUR_S * worthOf(item, known.from),
    locked: null,
  };
}

function windowsOf(item: PlanItem, { properties, from, until }: PlanMaterial): PlanStop['windows'] {
  const hours = properties.get(item.propertyId)?.hours ?? [];
  if (hours.length === 0) return null;
  const first = dayNumberOfDate(from);
  const days = Array.from({ length: dayNumberOfDate(until) - first + 1 }, (_, at) => first + at);
  return Object.fromEntries(days.map((day) => [day, openWindows(hours, weekdayOfDayNumber(day) + 1)]));
}

/** The first of the days by which an item must be done; null without one. */
function dueOf(item: PlanItem): string | null {
  const dates = item.orders.flatMap(({ dueOn }) => (dueOn === null ? [] : [dueOn]));
  return dates.sort()[0] ?? null;
}

/** The day from which all of an item may be done. [day number] */
function notBeforeOf(item: PlanItem): number | null {
  const dates = item.orders.flatMap(({ notBefore }) => (notBefore === null ? [] : [dayNumberOfDate(notBefore)]));
  return dates.length > 0 ? Math.max(...dates) : null;
}

function worthOf(item: PlanItem, from: string): number {
  const worth = item.orders.reduce((sum, { kind }) => sum + WORTH_HOURS[kind], item.visitDueOn ? VISIT_WORTH_HOURS : 0);
  const due = dueOf(item);
  return (worth || VISIT_WORTH_HOURS) * (due !== null && due < from ? OVERDUE_WORTH : 1);
}

type Days = Pick<PlanStop, 'firstDay' | 'lastDay' | 'wantedDay' | 'perDayOffS'>;

function daysOf(item: PlanItem, known: PlanMaterial): Days {
  const { from } = known;
  if (item.orders.length === 0 && item.visitDueOn !== null && !(item.place && item.place.day >= from))
    return daysOfVisit(item.propertyId, item.visitDueOn, known);
  const due = dueOf(item);
  const firstDay = notBeforeOf(item);
  const lastDay = due !== null && due >= from ? dayNumberOfDate(due) : null;
  if (item.place && item.place.day >= from) return { firstDay, lastDay, wantedDay: dayNumberOfDate(item.place.day), perDayOffS: MOVED_S };
  const first = dayNumberOfDate(from);
  return { firstDay, lastDay, wantedDay: Math.max(first, firstDay ?? first), perDayOffS: LATER_S };
}

/** A visit without other work is wanted when it is due, and may come a share of its interval sooner or later. */
function daysOfVisit(propertyId: string, dueOn: string, { properties, from, until }: PlanMaterial): Days {
  const slack = Math.floor(VISIT_SLACK * (properties.get(propertyId)?.everyDays ?? 0));
  const wanted = dayNumberOfDate(dueOn);
  const last = Math.min(dayNumberOfDate(until), wanted + slack);
  return { firstDay: wanted - slack, lastDay: dueOn === from ? null : last, wantedDay: wanted, perDayOffS: OFF_DUE_S };
}
