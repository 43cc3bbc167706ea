import { daysOfMonth } from '../../calendar/local-date.js';
import type { ControllerTraits } from '../../settings/controller-traits.js';
import { visitStarts } from '../../settings/replay/replay-starts.js';
import type { Program } from '../../settings/settings-fact.js';
import type { FactInForce } from '../../settings/replay/settings-timeline.js';
import { ROUND_OF_ALL } from '../days/day-pattern.js';
import type { ValveRun } from '../demand/standing-water.js';

const DAY = 1440;
const WEEK = 7;
/** Rounds that are longer are cut to the usual one: sixty weeks hold every interval beside every weekday, and most pairs of them. [d] */
const LONGEST_ROUND = 420;

/** A station's runs by the day on which their program started, of days that repeat. [min] */
export interface PlanRuns {
  readonly days: number;
  readonly stations: ReadonlyMap<number, readonly (readonly ValveRun[])[]>;
  readonly starts: ReadonlyMap<number, readonly number[]>;
  readonly all: readonly (ValveRun & { readonly station: number; readonly begunOn: number })[];
}

/**
 * The traits with the month's own percent on every day.
 *
 * @param traits - The timer. [%]
 * @param month - Calendar month, 'YYYY-MM'. [code]
 * @returns The same for one month. [%]
 */
export function traitsOfMonth(traits: ControllerTraits, month: string): ControllerTraits {
  const percents = traits.monthlyAdjustPercent;
  return percents ? { ...traits, monthlyAdjustPercent: percents.map(() => percents[Number(month.slice(5)) - 1] ?? 100) } : traits;
}

/**
 * Every run of programs over days that repeat: a week where all programs go by weekdays, twelve weeks where these hold whole rounds of every
 * interval, else as many weeks as do.
 *
 * @param programs - The programs. [code]
 * @param traits - The timer in that month. [code]
 * @param month - Calendar month, 'YYYY-MM'. [code]
 * @returns Runs by station and day. [min]
 */
export function planRuns(programs: readonly Program[], traits: ControllerTraits, month: string): PlanRuns {
  const { firstDay } = daysOfMonth(month);
  const days = roundOf(programs);
  const timeline: readonly FactInForce[] = [
    {
      fact: { effectiveAt: '1970-01-01T00:00', record: 'left', state: 'on', programs },
      from: Number.NEGATIVE_INFINITY,
      until: Number.POSITIVE_INFINITY,
    },
  ];
  const stations = new Map<number, ValveRun[][]>();
  const starts = new Map<number, number[]>();
  const all: (ValveRun & { station: number; begunOn: number })[] = [];
  visitStarts({ firstDay, days, pauses: [], traits, clockChanges: [] }, timeline, ({ begin, layOut }) => {
    const day = Math.floor(begin / DAY) - firstDay;
    if (day < 0 || day >= days) return;
    for (const segment of layOut.segments) {
      const run = { begin: begin + segment.begin, end: begin + segment.end };
      const ofStation = stations.get(segment.station) ?? Array.from({ length: days }, (): ValveRun[] => []);
      stations.set(segment.station, ofStation);
      ofStation[day]?.push(run);
      const counts = starts.get(segment.station) ?? new Array<number>(days).fill(0);
      starts.set(segment.station, counts);
      if (segment.first) counts[day] = (counts[day] ?? 0) + 1;
      all.push({ ...run, station: segment.station, begunOn: firstDay + day });
    }
  });
  return { days, stations, starts, all };
}

function roundOf(programs: readonly Program[]): number {
  if (programs.every(({ days }) => days.kind === 'weekdays' || days.kind === 'daily')) return WEEK;
  const intervals = programs.flatMap(({ days }) => (days.kind === 'every' ? [Math.max(1, Math.floor(days.everyDays))] : []));
  const isByParity = programs.some(({ days }) => days.kind === 'odd' || days.kind === 'even');
  if (isByParity || intervals.every((days) => ROUND_OF_ALL % days === 0)) return ROUND_OF_ALL;
  const round = intervals.reduce(leastCommonMultiple, WEEK);
  return round <= LONGEST_ROUND ? round : ROUND_OF_ALL;
}

function leastCommonMultiple(one: number, other: number): number {
  let [a, b] = [one, other];
  while (b !== 0) [a, b] = [b, a % b];
  return (one / a) * other;
}
