import { breachesOfPlan, type PlanBreach } from '@rillbook/routing/judge/breaches-of-plan.js';
import type { CrewDay, PlanInput } from '@rillbook/routing/plan/plan-input.js';
import { timedRoute, type TimedStop } from '@rillbook/routing/plan/timed-route.js';
import type { TravelTable } from '@rillbook/routing/travel/travel-table.js';
import { showStop } from '../../routes/stop.type.js';
import type { StopRow } from '../../routes/stop.entity.js';
import type { PlanItem, PlanMaterial } from '../material/plan-item.js';
import { leavesAt, type Places } from '../material/plan-input-of.js';
import { stopOfItem } from '../material/stop-of-item.js';
import { PlannedStop } from './month-plan.type.js';

/** What a day is shown from. */
export interface DayFacts {
  readonly known: PlanMaterial;
  readonly places: Places;
  readonly travel: TravelTable;
  readonly rows: ReadonlyMap<string, StopRow>;
  readonly now: { readonly day: string; readonly minute: number } | null;
}

/** Some stops of a day with their times, all in minutes since midnight or of length. */
export interface PartOfDay {
  readonly stops: readonly PlannedStop[];
  readonly leavesMinute: number;
  readonly homeMinute: number;
  readonly driveMinutes: number;
  readonly driveMetres: number | null;
  readonly workMinutes: number;
  readonly waitMinutes: number;
  readonly breaches: readonly PlanBreach[];
}

const MINUTE_S = 60;
const inMinutes = (seconds: number): number => Math.round(seconds / MINUTE_S);

/** Stops in the order in which they are to be driven, with the times that it gives, and what of it does not fit. */
export function plannedPart(crewDay: CrewDay, items: readonly PlanItem[], facts: DayFacts): PartOfDay {
  const input = inputOf(crewDay, items, facts);
  const route = items.map((_, at) => at);
  const timed = timedRoute(input, crewDay, route);
  return {
    stops: timed.stops.map((stop) => showTimed(stop, items[stop.stop]!, facts.rows)),
    leavesMinute: inMinutes(timed.leaveS),
    homeMinute: inMinutes(timed.homeS),
    driveMinutes: inMinutes(timed.driveS),
    driveMetres: timed.driveM,
    workMinutes: inMinutes(timed.workS),
    waitMinutes: inMinutes(timed.waitS),
    breaches: breachesOfPlan(input, { routes: [route], unplaced: [] }).filter(
      ({ stopId }) => !items.some(({ id, visited }) => visited && id === stopId),
    ),
  };
}

/** Stops that the crew has come to, in the order in which it came, with the times that were; only the ways between them are reckoned. */
export function donePart(crewDay: CrewDay, visited: readonly PlanItem[], facts: DayFacts): PartOfDay {
  const items = [...visited].sort((one, other) => (one.came?.fromMinute ?? 0) - (other.came?.fromMinute ?? 0));
  const driven = plannedPart(crewDay, items, facts);
  const stops = driven.stops.map((stop, at) => {
    const item = items[at]!;
    const beginMinute = Math.round(item.came?.fromMinute ?? stop.beginMinute);
    const endMinute = Math.max(beginMinute, Math.round(leavesAt(item, crewDay.crewId, facts.known)));
    return Object.assign(new PlannedStop(), stop, { beginMinute, endMinute, lateMinutes: 0 });
  });
  const [first, last] = [stops[0], stops.at(-1)];
  const wayHome = driven.homeMinute - (driven.stops.at(-1)?.endMinute ?? driven.homeMinute);
  return {
    ...driven,
    stops,
    leavesMinute: first ? first.beginMinute - first.driveMinutes : driven.leavesMinute,
    homeMinute: last ? last.endMinute + wayHome : driven.homeMinute,
    workMinutes: stops.reduce((sum, { beginMinute, endMinute }) => sum + endMinute - beginMinute, 0),
    waitMinutes: 0,
    breaches: [],
  };
}

/** A day of which a part was done: the way home from where it was done is not driven yet. */
export function joined(done: PartOfDay, rest: PartOfDay): PartOfDay {
  if (done.stops.length === 0) return rest;
  if (rest.stops.length === 0) return done;
  const between = done.stops.reduce((sum, { driveMinutes }) => sum + driveMinutes, 0);
  return {
    ...rest,
    stops: [...done.stops, ...rest.stops],
    leavesMinute: done.leavesMinute,
    driveMinutes: between + rest.driveMinutes,
    // The ways between what was done are known in minutes only.
    driveMetres: null,
    workMinutes: done.workMinutes + rest.workMinutes,
  };
}

function inputOf(crewDay: CrewDay, items: readonly PlanItem[], { known, places, travel }: DayFacts): PlanInput {
  const stops = items.map((item) => ({ ...stopOfItem(item, places.ofProperty.get(item.propertyId) ?? null, known), firstDay: null }));
  return { travel, stops, crewDays: [crewDay], evenness: 0 };
}

function showTimed({ driveS, beginS, endS, lateS }: TimedStop, item: PlanItem, rows: ReadonlyMap<string, StopRow>): PlannedStop {
  return Object.assign(new PlannedStop(), {
    stop: showStop(rows.get(item.stopId!)!),
    driveMinutes: inMinutes(driveS),
    beginMinute: inMinutes(beginS),
    endMinute: inMinutes(endS),
    lateMinutes: Number.isFinite(lateS) ? inMinutes(lateS) : null,
    visited: item.visited,
    visitDueOn: item.visitDueOn,
  });
}
