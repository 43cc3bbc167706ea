import type { WaterWindow } from '../plan-input.js';
import { START_STEP } from './place-starts.js';

const DAY = 1440;

/**
 * A controller on a meter that others share: its largest zone flow, and minutes that its valves need one after the other in the same weather.
 * Null is not known. [L/min] and [min]
 */
export interface Sharer {
  readonly id: string;
  readonly largestFlowLPerMin: number | null;
  readonly minutes: number | null;
}

/** What meter and main carry for all, the hours for all, and minutes of the day in which nothing may run. [L/min] and [min] */
export interface SharedSupply {
  readonly flowLimitLPerMin: number;
  readonly window: WaterWindow;
  readonly isClosed: (minute: number) => boolean;
}

/** A controller's part: of the flow in all hours, or of the hours with the whole flow. [L/min] and [min] */
export interface ShareOfSupply {
  readonly by: 'flow' | 'hours';
  readonly flowLimitLPerMin: number;
  readonly window: WaterWindow;
}

/**
 * A controller's part of what one meter carries for several, so that their plans together never ask for more, whatever each is set to.
 *
 * Where the largest zones of all may run at once, each has its own largest zone's flow and of the rest what its minutes are of all minutes.
 * Where they may not, or a flow is not known, they water one after the other: each has a part of the hours as long as its minutes ask for, to
 * the whole step of a start, in the order of their names.
 *
 * @param id - The controller. [code]
 * @param sharers - All that share the meter, this one included. [–]
 * @param supply - What they share. [L/min]
 * @returns Its part; parts of all together are no more than the whole. [L/min]
 */
export function shareOfSupply(id: string, sharers: readonly Sharer[], supply: SharedSupply): ShareOfSupply {
  const sorted = [...sharers].sort((one, other) => (one.id < other.id ? -1 : 1));
  const parts = partsOf(sorted);
  const at = sorted.findIndex((sharer) => sharer.id === id);
  const largest = sorted.map(({ largestFlowLPerMin }) => largestFlowLPerMin ?? Number.POSITIVE_INFINITY);
  const rest = supply.flowLimitLPerMin - largest.reduce((sum, each) => sum + each, 0);
  if (rest >= 0) {
    const flowLimitLPerMin = (largest[at] as number) + rest * (parts[at] as number);
    return { by: 'flow', flowLimitLPerMin, window: supply.window };
  }
  return { by: 'hours', flowLimitLPerMin: supply.flowLimitLPerMin, window: partOfHours(at, parts, supply) };
}

// Shares of all minutes; who does not know its own is taken as the mean of the others.
function partsOf(sharers: readonly Sharer[]): readonly number[] {
  const known = sharers.flatMap(({ minutes }) => (minutes === null ? [] : [minutes]));
  const mean = known.length ? known.reduce((sum, each) => sum + each, 0) / known.length : 1;
  const each = sharers.map(({ minutes }) => (mean > 0 ? (minutes ?? mean) : 1));
  const all = each.reduce((sum, minutes) => sum + minutes, 0);
  return each.map((minutes) => minutes / all);
}

function partOfHours(at: number, parts: readonly number[], { window, isClosed }: SharedSupply): WaterWindow {
  const length = window.until > window.from ? window.until - window.from : window.until - window.from + DAY;
  const steps = Array.from({ length: Math.floor(length / START_STEP) }, (_, step) => step * START_STEP);
  const open = steps.filter((after) => !isClosed((window.from + after) % DAY));
  const usable = open.length >= parts.length ? open : steps;
  // Everybody has a step at least; the others go by the parts.
  const spare = usable.length - parts.length;
  const until = (count: number) => count + Math.floor(spare * parts.slice(0, count).reduce((sum, part) => sum + part, 0) + 1e-9);
  const minuteOf = (step: number) => (step < usable.length ? (usable[step] as number) : length);
  const [begin, end] = [at === 0 ? 0 : minuteOf(until(at)), at === parts.length - 1 ? length : minuteOf(until(at + 1))];
  return { from: (window.from + begin) % DAY, until: (window.from + end) % DAY };
}
