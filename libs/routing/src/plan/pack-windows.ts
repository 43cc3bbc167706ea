import { DomainError } from '@rillbook/units/domain-error.js';
import type { PlanStop, TimeWindow } from './plan-input.js';

/** Windows of every stop in every class of crew day, one after the other: those of a pair stand from `from[pair]` to before `from[pair + 1]`. */
export interface PackedWindows {
  readonly from: Int32Array;
  readonly opens: Float64Array;
  readonly closes: Float64Array;
}

/** What crew days of one class share for every stop: who works, and which day it is. */
export interface DayClass {
  readonly crewId: string;
  readonly day: number;
}

const ALWAYS: readonly TimeWindow[] = [{ opensS: Number.NEGATIVE_INFINITY, closesS: Number.POSITIVE_INFINITY }];

/**
 * How long a stop's work takes one crew.
 *
 * @param stop - The stop. [–]
 * @param crewId - The crew. [code]
 * @returns The time. [s]
 * @throws {DomainError} `STOP_OUT_OF_DOMAIN` when no time is given for the crew, or it is below zero.
 */
export function serviceOf(stop: PlanStop, crewId: string): number {
  const seconds = typeof stop.serviceS === 'number' ? stop.serviceS : stop.serviceS[crewId];
  if (seconds === undefined || !(Number.isFinite(seconds) && seconds >= 0)) {
    throw new DomainError('STOP_OUT_OF_DOMAIN', { stop: stop.id, crewId, serviceS: seconds });
  }
  return seconds;
}

/**
 * When a stop's work may begin with one crew on one day, in order.
 *
 * @param stop - The stop. [–]
 * @param dayClass - Crew and day. [–]
 * @returns Windows of the begin; none where the property is not open long enough. [s since the day began]
 */
export function beginWindows(stop: PlanStop, dayClass: DayClass): readonly TimeWindow[] {
  const { crewId, day } = dayClass;
  const given = stop.windows === null ? ALWAYS : isList(stop.windows) ? stop.windows : (stop.windows[day] ?? []);
  const after = stop.wholeWorkInside ? serviceOf(stop, crewId) : 0;
  return given
    .map(({ opensS, closesS }) => ({ opensS, closesS: closesS - after }))
    .filter(({ opensS, closesS }) => closesS >= opensS)
    .sort((one, other) => one.opensS - other.opensS);
}

const isList = (windows: NonNullable<PlanStop['windows']>): windows is readonly TimeWindow[] => Array.isArray(windows);

/**
 * Windows of every stop and class as flat columns.
 *
 * @param stops - The stops. [–]
 * @param classes - The classes. [–]
 * @returns The columns; a pair is `stop * classes + class`. [s since the day began]
 */
export function packWindows(stops: readonly PlanStop[], classes: readonly DayClass[]): PackedWindows {
  const all = stops.flatMap((stop) => classes.map((one) => beginWindows(stop, one)));
  const from = new Int32Array(all.length + 1);
  for (const [pair, windows] of all.entries()) from[pair + 1] = (from[pair] as number) + windows.length;
  const windows = all.flat();
  return {
    from,
    opens: Float64Array.from(windows, ({ opensS }) => opensS),
    closes: Float64Array.from(windows, ({ closesS }) => closesS),
  };
}
