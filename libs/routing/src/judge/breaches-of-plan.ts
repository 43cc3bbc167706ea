import { mayBeOn } from '../plan/pack-plan.js';
import type { Assignment, CrewDay, PlanInput } from '../plan/plan-input.js';
import { timedRoute, type TimedRoute } from '../plan/timed-route.js';

/** What of an input does not hold in a plan. */
export interface PlanBreach {
  readonly code: 'missing' | 'twice' | 'notAllowed' | 'late' | 'homeLate' | 'tooBusy' | 'tooMuchLoad' | 'lockMoved';
  readonly crewDayId: string | null;
  readonly stopId: string | null;
  /** By how much, where that is a time. [s] */
  readonly byS: number | null;
}

/** Differences smaller than this are rounding, in s. */
const ROUNDING_S = 1e-6;

/**
 * Everything in a plan that breaks its input, worked out from the input alone and not from what the search kept.
 *
 * @param input - What was to be planned. [–]
 * @param assignment - The plan. [–]
 * @returns The breaches; none where the plan holds. [code]
 */
export function breachesOfPlan(input: PlanInput, assignment: Assignment): readonly PlanBreach[] {
  const { stops, crewDays } = input;
  const seen = new Map<number, number>();
  for (const stop of [...assignment.routes.flat(), ...assignment.unplaced]) seen.set(stop, (seen.get(stop) ?? 0) + 1);
  const counted = stops.flatMap(({ id }, stop): PlanBreach[] => {
    const times = seen.get(stop) ?? 0;
    return times === 1 ? [] : [{ code: times ? 'twice' : 'missing', crewDayId: null, stopId: id, byS: null }];
  });
  return [...counted, ...crewDays.flatMap((day, at) => breachesOfDay(input, day, assignment.routes[at] ?? []))];
}

function breachesOfDay(input: PlanInput, day: CrewDay, route: readonly number[]): readonly PlanBreach[] {
  const timed = timedRoute(input, day, route);
  const idOf = (stop: number): string | null => input.stops[stop]?.id ?? null;
  const breach = (code: PlanBreach['code'], stopId: string | null, byS: number | null): PlanBreach => ({
    code,
    crewDayId: day.id,
    stopId,
    byS,
  });
  const notAllowed = route.filter((stop) => !mayBeOn(input.stops[stop] as PlanInput['stops'][number], day));
  const late = timed.stops.filter(({ lateS }) => lateS > ROUNDING_S);
  return [
    ...notAllowed.map((stop) => breach('notAllowed', idOf(stop), null)),
    ...late.map(({ stop, lateS }) => breach('late', idOf(stop), lateS)),
    ...overfull(input, day, timed).map(([code, byS]) => breach(code, null, byS)),
    ...locksMoved(input, route).map((stop) => breach('lockMoved', idOf(stop), null)),
  ];
}

function overfull(input: PlanInput, day: CrewDay, timed: TimedRoute): readonly (readonly [PlanBreach['code'], number])[] {
  if (timed.stops.length === 0) return [];
  const load = timed.stops.reduce((sum, { stop }) => sum + (input.stops[stop]?.load ?? 0), 0);
  const over: readonly (readonly [PlanBreach['code'], number])[] = [
    ['homeLate', timed.homeS - day.closesS],
    ['tooBusy', timed.driveS + timed.workS - day.mostBusyS],
    ['tooMuchLoad', load - day.mostLoad],
  ];
  return over.filter(([, by]) => by > ROUNDING_S);
}

function locksMoved(input: PlanInput, route: readonly number[]): readonly number[] {
  const locked = route.filter((stop) => input.stops[stop]?.locked);
  const position = (stop: number): number => input.stops[stop]?.locked?.position ?? 0;
  return locked.filter((stop, at) => at > 0 && position(locked[at - 1] as number) > position(stop));
}
