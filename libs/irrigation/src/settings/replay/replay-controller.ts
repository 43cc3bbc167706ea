import { DomainError } from '@rillbook/units/domain-error.js';
import type { ClockChange } from '../../calendar/clock-change.js';
import { elapsedMinutes } from '../../calendar/elapsed-minutes.js';
import type { ControllerTraits } from '../controller-traits.js';
import type { RainPause } from '../rain-pause.js';
import { DAYS_BEFORE, type LaidStart, type LayOut, pauseSpans, type ReplayedRun, replayStarts, visitStarts } from './replay-starts.js';
import type { SettingsFact } from '../settings-fact.js';
import { type FactInForce, settingsTimeline } from './settings-timeline.js';
import { type DayPart, StationDays, type StationReplay, type UnknownDay } from './station-days.js';

const MINUTES_PER_DAY = 1440;

/** What is replayed: facts and pauses of one controller over whole local days, of which some may have no starts (a rain sensor's). */
export interface ReplayInput {
  readonly firstDay: number;
  readonly days: number;
  readonly facts: readonly SettingsFact[];
  readonly pauses: readonly RainPause[];
  readonly traits: ControllerTraits;
  readonly clockChanges: readonly ClockChange[];
  readonly daysWithoutStarts?: ReadonlySet<number>;
}

/** A controller's replay: per day the reason why it is unknown (null: known), and the stations that any program ran. */
export interface ControllerReplay {
  readonly unknown: readonly (UnknownDay | null)[];
  readonly stations: ReadonlyMap<number, StationReplay>;
}

/**
 * Replays a controller's settings day by day.
 *
 * Water counts on the local day on which it flows: a run past midnight is divided. A day on which the settings are unknown for any part is
 * unknown as a whole, unless a pause covers it: then nothing ran, whatever the settings. A start within a rain pause does not happen; a pause,
 * or a state other than on, ends the run that it meets. A start at a wall time that the clock skips runs at the first instant after; one that
 * occurs twice runs once. A valve that two programs hold open at once passes water once.
 *
 * @param input - Facts, pauses, traits and the days wanted. [code]
 * @returns Minutes and runs of every station on every local day. [min]
 * @throws {DomainError} `WALL_TIME_INVALID`, `SETTINGS_OUT_OF_DOMAIN`, `PROGRAM_DAYS_INVALID` or `MONTHLY_ADJUST_INVALID` on bad settings;
 * `REPLAY_DAYS_INVALID` when the days are no whole number, or fewer than none.
 */
export function replayController(input: ReplayInput): ControllerReplay {
  return replayInParts(input, []).whole;
}

/** A replay, and those of its parts. */
export interface ReplayInParts {
  readonly whole: ControllerReplay;
  readonly parts: readonly ControllerReplay[];
}

/**
 * Replays a controller's settings over many days at once, for whoever asks of all of them and of parts: each part as if it were replayed alone.
 *
 * @param input - Facts, pauses, traits and the days wanted. [code]
 * @param parts - Parts of these days, as months; none shares a day with another. [d]
 * @returns Minutes and runs of every station on every local day, of all days and of each part. [min]
 * @throws {DomainError} As `replayController`.
 */
export function replayInParts(input: ReplayInput, parts: readonly DayPart[]): ReplayInParts {
  const { firstDay, days: wanted } = input;
  if (!(Number.isSafeInteger(firstDay) && Number.isSafeInteger(wanted) && wanted >= 0))
    throw new DomainError('REPLAY_DAYS_INVALID', { firstDay, days: wanted });
  const timeline = settingsTimeline(input.facts, input.clockChanges);
  const midnights: number[] = [];
  for (let day = 0; day <= input.days; day += 1) midnights.push(elapsedMinutes(input.firstDay + day, 0, input.clockChanges));
  const unknown = unknownDays(midnights, timeline, pauseSpans(input.pauses, input.clockChanges));
  const days = new StationDays(input.days, parts);
  const depends = addStarts(input, timeline, midnights, days);
  const partOf = (part: DayPart, at: number): ControllerReplay => {
    if (depends) return replayController({ ...input, firstDay: input.firstDay + part.from, days: part.days });
    const own = unknown.slice(part.from, part.from + part.days);
    return { unknown: own, stations: days.part(at, own) };
  };
  return { whole: { unknown, stations: days.whole(unknown) }, parts: parts.map(partOf) };
}

// Tells whether a part may depend on starts of so long before it that they are not looked at where it is replayed alone.
function addStarts(input: ReplayInput, timeline: readonly FactInForce[], midnights: readonly number[], days: StationDays): boolean {
  // Starts are in order; only where several run at once their runs may not be, and two may hold one valve open.
  if ((input.traits.runsAtOnce ?? 1) > 1) {
    for (const run of inOrder(replayStarts(input, timeline))) addRun(run, midnights, days);
    return true;
  }
  const add = addingStarts(midnights, days);
  let [busySince, busyUntil, longest] = [0, Number.NEGATIVE_INFINITY, 0];
  visitStarts(input, timeline, (start) => {
    const { begin, stop, layOut } = start;
    if (begin > busyUntil) busySince = begin;
    busyUntil = Math.max(begin, Math.min(begin + layOut.end, stop));
    longest = Math.max(longest, busyUntil - busySince);
    add(start);
  });
  return longest >= DAYS_BEFORE * MINUTES_PER_DAY;
}

function unknownDays(
  midnights: readonly number[],
  timeline: readonly FactInForce[],
  pauses: readonly { readonly from: number; readonly until: number }[],
): readonly (UnknownDay | null)[] {
  const [begin, end] = [midnights[0] as number, midnights.at(-1) as number];
  // Mostly one fact was in force all the time.
  const throughout = timeline.find(({ from, until }) => from <= begin && until >= end);
  if (throughout && (throughout.fact.state === 'on' || throughout.fact.state === 'off'))
    return new Array<UnknownDay | null>(midnights.length - 1).fill(null);
  return midnights.slice(0, -1).map((from, day) => {
    const until = midnights[day + 1] as number;
    return pauses.some((pause) => pause.from <= from && until <= pause.until) ? null : unknownDay(timeline, from, until);
  });
}

function inOrder(runs: readonly ReplayedRun[]): readonly ReplayedRun[] {
  return [...runs].sort((a, b) => a.begin - b.begin);
}

function addRun(run: ReplayedRun, midnights: readonly number[], days: StationDays): void {
  const from = days.rowOf(run.station);
  // Programs that run together may both open one valve.
  const begin = days.take(from, run.begin, run.end);
  const day = dayOf(midnights, begin);
  spread(days, { row: from, program: run.program }, midnights, day, [begin, run.end]);
  if (run.first && day >= 0 && day < days.days) days.runs[from + day] = (days.runs[from + day] as number) + 1;
}

// A start that begins and ends on one day, which nearly all do, adds as much to its stations as every other of its kind.
function addingStarts(midnights: readonly number[], days: StationDays): (start: LaidStart) => void {
  const known = new Map<LayOut, { readonly rows: Int32Array; place: number }>();
  const rowsOf = ({ program, layOut }: LaidStart, day: number) => {
    let present = known.get(layOut);
    if (!present) {
      present = { rows: Int32Array.from(layOut.stations, ({ station }) => days.rowOf(station)), place: -1 };
      known.set(layOut, present);
    }
    // All starts of one kind in a part of the days are noted once.
    if (present.place !== days.placeOf(day)) for (const from of present.rows) days.ranBy(from, day, program);
    present.place = days.placeOf(day);
    return present.rows;
  };
  return (start) => {
    const { program, begin, stop, layOut } = start;
    const day = dayOf(midnights, begin);
    if (day >= 0 && day < midnights.length - 1 && begin + layOut.end <= Math.min(stop, midnights[day + 1] as number)) {
      const rows = rowsOf(start, day);
      const { minutes, runs } = days;
      for (let each = 0; each < rows.length; each += 1) {
        const at = (rows[each] as number) + day;
        minutes[at] = (minutes[at] as number) + (layOut.stations[each] as LayOut['stations'][number]).minutes;
        runs[at] = (runs[at] as number) + 1;
      }
      return;
    }
    for (const segment of layOut.segments) {
      const [from, end] = [begin + segment.begin, Math.min(begin + segment.end, stop)];
      if (end > from) addRun({ station: segment.station, program, begin: from, end, first: segment.first }, midnights, days);
    }
  };
}

// Days are nearly all of 1,440 minutes, so the guess is right or next to it; below 0 before the first, and `days` after the last.
function dayOf(midnights: readonly number[], minute: number): number {
  const last = midnights.length - 1;
  let day = Math.min(last, Math.max(-1, Math.floor((minute - (midnights[0] as number)) / MINUTES_PER_DAY)));
  while (day < last && (midnights[day + 1] as number) <= minute) day += 1;
  while (day >= 0 && (midnights[day] as number) > minute) day -= 1;
  return day;
}

function unknownDay(timeline: readonly FactInForce[], begin: number, end: number): UnknownDay | null {
  if ((timeline[0]?.from ?? Number.POSITIVE_INFINITY) > begin) return 'settings-not-known';
  let reason: UnknownDay | null = null;
  for (const { fact, from, until } of timeline) {
    if (from >= end || until <= begin) continue;
    if (fact.state === 'unknown') return 'settings-not-known';
    if (fact.state === 'weather') reason = 'settings-from-weather';
  }
  return reason;
}

// The segment begins on the day given.
function spread(
  days: StationDays,
  of: { readonly row: number; readonly program: string },
  midnights: readonly number[],
  from: number,
  [begin, end]: readonly [number, number],
): void {
  for (let day = Math.max(0, from); day < days.days && (midnights[day] as number) < end; day += 1) {
    const overlap = Math.min(end, midnights[day + 1] as number) - Math.max(begin, midnights[day] as number);
    if (overlap <= 0) continue;
    days.minutes[of.row + day] = (days.minutes[of.row + day] as number) + overlap;
    days.ranBy(of.row, day, of.program);
  }
}
