import { bestPlace } from '../plan/best-place.kernel.js';
import { mayBeOn, packPlan } from '../plan/pack-plan.js';
import { beginWindows, serviceOf } from '../plan/pack-windows.js';
import type { Assignment, CrewDay, PlanInput, PlanStop } from '../plan/plan-input.js';
import { RouteBook } from '../plan/route-book.js';

/** Why a stop has no place in a plan. Times in s. */
export type UnplacedReason =
  | { readonly code: 'noPosition' }
  | { readonly code: 'noSkill'; readonly skills: readonly string[] }
  | { readonly code: 'noDay'; readonly firstDay: number | null; readonly lastDay: number | null }
  | { readonly code: 'neverOpen'; readonly workS: number }
  | { readonly code: 'tooLong'; readonly workS: number; readonly mostS: number }
  | { readonly code: 'daysFull'; readonly needsS: number; readonly mostRoomS: number; readonly crewDayId: string }
  | { readonly code: 'hoursClash'; readonly crewDayId: string }
  | { readonly code: 'driveTooLong'; readonly crewDayId: string; readonly addedS: number };

/**
 * Why each stop without a place has none, judged against the finished plan: the first of these that holds.
 *
 * @param input - What was to be planned. [–]
 * @param assignment - The plan. [–]
 * @returns Reasons in the order of `assignment.unplaced`. [code]
 */
export function whyUnplaced(input: PlanInput, assignment: Assignment): readonly UnplacedReason[] {
  const plan = packPlan(input);
  const full = new RouteBook(plan, assignment.routes);
  const empty = new RouteBook(
    plan,
    input.crewDays.map(() => []),
  );
  return assignment.unplaced.map((stop) => {
    const what = input.stops[stop] as PlanStop;
    const allowed = input.crewDays.filter((day) => mayBeOn(what, day));
    return (
      whyNotAllowed(input, what, allowed) ??
      (bestPlace(empty, stop, null).day < 0 ? whyNotAlone(what, allowed) : whyNotBeside(input, full, { stop, what }))
    );
  });
}

function whyNotAllowed({ crewDays }: PlanInput, stop: PlanStop, allowed: readonly CrewDay[]): UnplacedReason | null {
  if (stop.place === null) return { code: 'noPosition' };
  if (allowed.length > 0) return null;
  const skilled = crewDays.some((day) => stop.skills.every((skill) => day.skills.includes(skill)));
  if (!skilled && crewDays.length > 0) return { code: 'noSkill', skills: stop.skills };
  return { code: 'noDay', firstDay: stop.firstDay, lastDay: stop.lastDay };
}

function whyNotAlone(stop: PlanStop, allowed: readonly CrewDay[]): UnplacedReason {
  const shortest = Math.min(...allowed.map(({ crewId }) => serviceOf(stop, crewId)));
  const mostS = Math.max(...allowed.map(({ mostBusyS, opensS, closesS }) => Math.min(mostBusyS, closesS - opensS)));
  const open = allowed.some((day) =>
    beginWindows(stop, day).some(({ opensS, closesS }) => opensS + serviceOf(stop, day.crewId) <= day.closesS && closesS >= day.opensS),
  );
  return open ? { code: 'tooLong', workS: shortest, mostS } : { code: 'neverOpen', workS: shortest };
}

function whyNotBeside(
  input: PlanInput,
  book: RouteBook,
  { stop, what }: { readonly stop: number; readonly what: PlanStop },
): UnplacedReason {
  const place = bestPlace(book, stop, null);
  const day = input.crewDays[place.day];
  if (day) return { code: 'driveTooLong', crewDayId: day.id, addedS: place.cost };
  const rooms = input.crewDays.flatMap((one, at) => {
    if (!mayBeOn(what, one)) return [];
    const needsS = serviceOf(what, one.crewId) + shortestDetour(book, at, stop);
    const loaded = (book.load[at] as number) + what.load > one.mostLoad;
    return [{ id: one.id, needsS, roomS: loaded ? 0 : Math.max(0, one.mostBusyS - (book.busy[at] as number)) }];
  });
  const roomiest = rooms.reduce((best, one) => (one.roomS - one.needsS > best.roomS - best.needsS ? one : best));
  if (roomiest.roomS >= roomiest.needsS) return { code: 'hoursClash', crewDayId: roomiest.id };
  return { code: 'daysFull', needsS: roomiest.needsS, mostRoomS: roomiest.roomS, crewDayId: roomiest.id };
}

// The least that driving grows when a stop is put into a day, its hours not looked at.
function shortestDetour({ plan, routes }: RouteBook, day: number, stop: number): number {
  const route = routes[day] as readonly number[];
  const way = (from: number, to: number): number => plan.travel[from * plan.places + to] as number;
  const places = [plan.start[day] as number, ...route.map((one) => plan.place[one] as number), plan.end[day] as number];
  const there = plan.place[stop] as number;
  const detours = places.slice(1).map((to, at) => {
    const from = places[at] as number;
    return way(from, there) + way(there, to) - (route.length > 0 ? way(from, to) : 0);
  });
  return Math.max(0, Math.min(...detours));
}
