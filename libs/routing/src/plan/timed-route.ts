import type { CrewDay, PlanInput } from './plan-input.js';
import { beginWindows, serviceOf } from './pack-windows.js';

/** A stop with its times. [s since the day began] */
export interface TimedStop {
  /** Index into the plan's stops. */
  readonly stop: number;
  /** Drive from the stop before, or from the start. [s], [m] where ways are known */
  readonly driveS: number;
  readonly driveM: number | null;
  readonly arriveS: number;
  readonly beginS: number;
  readonly endS: number;
  /** What the work begins later than its last window allows; 0 in time, infinite where no window is long enough. [s] */
  readonly lateS: number;
}

/** A crew day with its times. */
export interface TimedRoute {
  readonly crewDayId: string;
  readonly leaveS: number;
  readonly stops: readonly TimedStop[];
  /** Drive to the end. */
  readonly homeDriveS: number;
  readonly homeDriveM: number | null;
  readonly homeS: number;
  readonly driveS: number;
  readonly driveM: number | null;
  readonly workS: number;
  readonly waitS: number;
}

/**
 * When a crew is where on one day, if it drives the stops in this order and leaves no earlier than the first one needs.
 *
 * @param input - Stops and travel. [–]
 * @param day - The crew day. [–]
 * @param route - Its stops in order. [–]
 * @returns The times; a day without stops starts and ends when it opens. [s since the day began]
 */
export function timedRoute(input: PlanInput, day: CrewDay, route: readonly number[]): TimedRoute {
  const stops: TimedStop[] = [];
  let here = day.startPlace;
  let now = day.opensS;
  for (const stop of route) {
    const timed = visited(input, day, { stop, here, now });
    stops.push(timed);
    here = input.stops[stop]?.place ?? null;
    now = timed.endS;
  }
  const home = route.length > 0 ? drive(input, here, day.endPlace) : { driveS: 0, driveM: 0 };
  const first = stops[0];
  const leaveS = first ? first.beginS - first.driveS : day.opensS;
  if (first) stops[0] = { ...first, arriveS: first.beginS };
  const sum = (of: (stop: TimedStop) => number): number => stops.reduce((total, one) => total + of(one), 0);
  const metres = [home.driveM, ...stops.map(({ driveM }) => driveM)];
  return {
    crewDayId: day.id,
    leaveS,
    stops,
    homeDriveS: home.driveS,
    homeDriveM: home.driveM,
    homeS: now + home.driveS,
    driveS: home.driveS + sum(({ driveS }) => driveS),
    driveM: metres.includes(null) ? null : metres.reduce<number>((total, way) => total + (way ?? 0), 0),
    workS: sum(({ beginS, endS }) => endS - beginS),
    waitS: sum(({ arriveS, beginS }) => beginS - arriveS),
  };
}

function visited(
  input: PlanInput,
  day: CrewDay,
  { stop, here, now }: { readonly stop: number; readonly here: number | null; readonly now: number },
): TimedStop {
  const what = input.stops[stop] as PlanInput['stops'][number];
  const { driveS, driveM } = drive(input, here, what.place);
  const arriveS = now + driveS;
  const windows = beginWindows(what, day);
  const window = windows.find(({ closesS }) => arriveS <= closesS);
  const beginS = window ? Math.max(arriveS, window.opensS) : arriveS;
  const last = windows.at(-1);
  const lateS = window ? 0 : last ? arriveS - last.closesS : Number.POSITIVE_INFINITY;
  return { stop, driveS, driveM, arriveS, beginS, endS: beginS + serviceOf(what, day.crewId), lateS };
}

function drive({ travel }: PlanInput, from: number | null, to: number | null): { readonly driveS: number; readonly driveM: number | null } {
  if (from === null || to === null) return { driveS: 0, driveM: travel.metres && 0 };
  const at = from * travel.size + to;
  return { driveS: travel.seconds[at] as number, driveM: travel.metres && (travel.metres[at] as number) };
}
