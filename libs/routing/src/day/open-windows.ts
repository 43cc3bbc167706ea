import type { TimeWindow } from '../plan/plan-input.js';

/** Hours of a property on some days of the week: when its gate is open, or when nobody may work there, as in school hours. */
export interface VisitHours {
  readonly kind: 'open' | 'closed';
  /** Monday 1 to Sunday 7. */
  readonly weekdays: readonly number[];
  readonly fromMinute: number;
  readonly untilMinute: number;
}

const MINUTE_S = 60;
const WHOLE_DAY: TimeWindow = { opensS: 0, closesS: 24 * 3600 };

/**
 * When a property may be visited on one day of the week: its open hours, without those in which it is closed. Where no open hours are stated
 * for any day the whole day is open; where they are stated for other days only, this day is not.
 *
 * @param hours - Stated hours; those of one kind may overlap. [min since the day began]
 * @param weekday - Monday 1 to Sunday 7. [–]
 * @returns Windows in order, apart from each other. [s since the day began]
 */
export function openWindows(hours: readonly VisitHours[], weekday: number): readonly TimeWindow[] {
  const on = (kind: VisitHours['kind']): readonly TimeWindow[] =>
    hours
      .filter((one) => one.kind === kind && one.weekdays.includes(weekday))
      .map(({ fromMinute, untilMinute }) => ({ opensS: fromMinute * MINUTE_S, closesS: untilMinute * MINUTE_S }));
  const open = hours.some(({ kind }) => kind === 'open') ? joined(on('open')) : [WHOLE_DAY];
  return on('closed').reduce<readonly TimeWindow[]>((left, closed) => left.flatMap((window) => without(window, closed)), open);
}

function joined(windows: readonly TimeWindow[]): readonly TimeWindow[] {
  const found: TimeWindow[] = [];
  for (const window of [...windows].sort((one, other) => one.opensS - other.opensS)) {
    const last = found.at(-1);
    if (last && window.opensS <= last.closesS) found[found.length - 1] = { ...last, closesS: Math.max(last.closesS, window.closesS) };
    else found.push(window);
  }
  return found;
}

const without = ({ opensS, closesS }: TimeWindow, closed: TimeWindow): readonly TimeWindow[] =>
  [
    { opensS, closesS: Math.min(closesS, closed.opensS) },
    { opensS: Math.max(opensS, closed.closesS), closesS },
  ].filter((window) => window.closesS > window.opensS);
