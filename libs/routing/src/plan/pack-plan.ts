import { DomainError } from '@rillbook/units/domain-error.js';
import { packWindows, serviceOf, type DayClass, type PackedWindows } from './pack-windows.js';
import type { CrewDay, PlanInput, PlanStop } from './plan-input.js';

/** How many near stops each stop knows when a part of the plan is taken apart. */
const NEAR = 120;

/** A plan's input as columns, so that the search runs over numbers only. Stops, crew days, classes and places are indices. */
export interface PackedPlan {
  readonly stops: number;
  readonly days: number;
  readonly classes: number;
  /** Places of the travel table and one more, from and to which travel takes no time. */
  readonly places: number;
  readonly travel: Float64Array;
  readonly place: Int32Array;
  readonly load: Float64Array;
  /** By stop and class. */
  readonly service: Float64Array;
  readonly windows: PackedWindows;
  /** By stop and crew day: what this day costs the stop besides; infinite where it may not be. */
  readonly placing: Float64Array;
  readonly leaveOut: Float64Array;
  readonly locked: Uint8Array;
  readonly dayClass: Int32Array;
  /** Crew days of one kind are the same to every stop as long as they are empty. */
  readonly dayKind: Int32Array;
  readonly start: Int32Array;
  readonly end: Int32Array;
  readonly opens: Float64Array;
  readonly closes: Float64Array;
  readonly mostBusy: Float64Array;
  readonly mostLoad: Float64Array;
  readonly goingOut: Float64Array;
  readonly evenness: number;
  /** For each stop itself and its nearest others, nearest first. */
  readonly near: readonly Int32Array[];
  /** Where the search begins: locked stops on their days, in their order. */
  readonly skeleton: readonly (readonly number[])[];
}

/**
 * Whether a stop may be on a crew day at all, windows and hours not looked at.
 *
 * @param stop - The stop. [–]
 * @param day - The crew day. [–]
 * @returns Whether skills and dates allow it; a locked stop may be on its own day only. [code]
 */
export function mayBeOn(stop: PlanStop, day: CrewDay): boolean {
  if (stop.place === null) return false;
  if (stop.locked) return stop.locked.crewDayId === day.id;
  if (stop.firstDay !== null && day.day < stop.firstDay) return false;
  if (stop.lastDay !== null && day.day > stop.lastDay) return false;
  return stop.skills.every((skill) => day.skills.includes(skill));
}

/**
 * Looks at a plan's input and lays it out for the search.
 *
 * @param input - The input. [–]
 * @returns The same as columns. [s]
 * @throws {DomainError} `PLAN_OUT_OF_DOMAIN` when an id comes twice or a crew day is unknown, `PLACE_OUT_OF_DOMAIN` when a place is not in the
 * travel table, `STOP_OUT_OF_DOMAIN` when a time is not known.
 */
export function packPlan(input: PlanInput): PackedPlan {
  refuseDoubles(input.stops, 'stop');
  refuseDoubles(input.crewDays, 'crewDay');
  const { travel, stops, crewDays } = input;
  refuseUnknownCosts(input);
  const nowhere = travel.size;
  const place = (one: number | null): number => {
    if (one !== null && !(Number.isInteger(one) && one >= 0 && one < nowhere)) throw new DomainError('PLACE_OUT_OF_DOMAIN', { place: one });
    return one ?? nowhere;
  };
  const { classes, dayClass } = classesOf(input);
  const placing = placingCosts(input);
  const column = (of: (day: CrewDay) => number): Float64Array => Float64Array.from(crewDays, of);
  const packed = {
    stops: stops.length,
    days: crewDays.length,
    classes: classes.length,
    places: nowhere + 1,
    travel: withNowhere(travel.seconds, nowhere),
    place: Int32Array.from(stops, (stop) => place(stop.place)),
    load: Float64Array.from(stops, (stop) => stop.load),
    service: Float64Array.from(stops.flatMap((stop) => classes.map(({ crewId }) => serviceOf(stop, crewId)))),
    windows: packWindows(stops, classes),
    placing,
    leaveOut: Float64Array.from(stops, (stop) => stop.leaveOutS),
    locked: Uint8Array.from(stops, (stop) => Number(stop.locked !== null)),
    dayClass,
    start: Int32Array.from(crewDays, (day) => place(day.startPlace)),
    end: Int32Array.from(crewDays, (day) => place(day.endPlace)),
    opens: column((day) => day.opensS),
    closes: column((day) => day.closesS),
    mostBusy: column((day) => day.mostBusyS),
    mostLoad: column((day) => day.mostLoad),
    goingOut: column((day) => day.goingOutS),
    evenness: input.evenness,
  };
  return { ...packed, dayKind: kindsOf(packed), near: nearStops(packed), skeleton: skeletonOf(input) };
}

function refuseDoubles(things: readonly { readonly id: string }[], what: string): void {
  const seen = new Set<string>();
  for (const { id } of things) {
    if (seen.has(id)) throw new DomainError('PLAN_OUT_OF_DOMAIN', { [what]: id, reason: 'twice' });
    seen.add(id);
  }
}

function refuseUnknownCosts({ stops, evenness }: PlanInput): void {
  for (const { id, load, leaveOutS, perDayOffS } of stops) {
    if (![load, leaveOutS, perDayOffS].every((cost) => Number.isFinite(cost) && cost >= 0)) {
      throw new DomainError('STOP_OUT_OF_DOMAIN', { stop: id, load, leaveOutS, perDayOffS });
    }
  }
  if (!(Number.isFinite(evenness) && evenness >= 0)) throw new DomainError('PLAN_OUT_OF_DOMAIN', { evenness });
}

// Crew days that treat every stop alike share a class: the day counts only where windows differ by day, the crew only where times do.
function classesOf({ stops, crewDays }: PlanInput): { readonly classes: readonly DayClass[]; readonly dayClass: Int32Array } {
  const byCrew = stops.some((stop) => typeof stop.serviceS !== 'number');
  const byDay = stops.some((stop) => stop.windows !== null && !Array.isArray(stop.windows));
  const known = new Map<string, number>();
  const classes: DayClass[] = [];
  const dayClass = Int32Array.from(crewDays, ({ crewId, day }) => {
    const key = `${byCrew ? crewId : ''}\n${byDay ? day : ''}`;
    const found = known.get(key) ?? classes.push({ crewId, day }) - 1;
    known.set(key, found);
    return found;
  });
  return { classes, dayClass };
}

function placingCosts({ stops, crewDays }: PlanInput): Float64Array {
  return Float64Array.from(
    stops.flatMap((stop) =>
      crewDays.map((day) => {
        if (!mayBeOn(stop, day)) return Number.POSITIVE_INFINITY;
        return stop.wantedDay === null || stop.locked ? 0 : stop.perDayOffS * Math.abs(day.day - stop.wantedDay);
      }),
    ),
  );
}

function withNowhere(seconds: Float64Array, size: number): Float64Array {
  const table = new Float64Array((size + 1) ** 2);
  for (let row = 0; row < size; row += 1) table.set(seconds.subarray(row * size, (row + 1) * size), row * (size + 1));
  return table;
}

function kindsOf(packed: Omit<PackedPlan, 'dayKind' | 'near' | 'skeleton'>): Int32Array {
  const known = new Map<string, number>();
  const { days, stops, dayClass, start, end, opens, closes, mostBusy, mostLoad, goingOut, placing } = packed;
  return Int32Array.from({ length: days }, (_, day) => {
    const costs = Array.from({ length: stops }, (_unused, stop) => placing[stop * days + day]);
    const own = [dayClass, start, end, opens, closes, mostBusy, mostLoad, goingOut].map((column) => column[day]);
    const key = [...own, ...costs].join(' ');
    const found = known.get(key) ?? known.size;
    known.set(key, found);
    return found;
  });
}

function nearStops({ stops, place, travel, places }: Pick<PackedPlan, 'stops' | 'place' | 'travel' | 'places'>): readonly Int32Array[] {
  const all = Array.from({ length: stops }, (_, stop) => stop);
  const known = all.filter((stop) => place[stop] !== places - 1);
  return all.map((stop) => {
    const row = (place[stop] as number) * places;
    const way = (other: number): number => (other === stop ? -1 : (travel[row + (place[other] as number)] as number));
    return Int32Array.from([...known].sort((one, other) => way(one) - way(other)).slice(0, NEAR));
  });
}

function skeletonOf({ stops, crewDays }: PlanInput): readonly (readonly number[])[] {
  const routes = new Map<string, { readonly stop: number; readonly position: number }[]>(crewDays.map(({ id }) => [id, []]));
  for (const [stop, { id, place, locked }] of stops.entries()) {
    if (!locked || place === null) continue;
    const route = routes.get(locked.crewDayId);
    if (!route) throw new DomainError('PLAN_OUT_OF_DOMAIN', { stop: id, crewDay: locked.crewDayId, reason: 'unknown' });
    route.push({ stop, position: locked.position });
  }
  return crewDays.map(({ id }) => [...(routes.get(id) ?? [])].sort((one, other) => one.position - other.position).map(({ stop }) => stop));
}
