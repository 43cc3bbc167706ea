import type { ClockChange } from '../calendar/clock-change.js';
import { elapsedMinutes } from '../calendar/elapsed-minutes.js';
import type { ControllerTraits } from './controller-traits.js';
import type { RainPause } from './rain-pause.js';
import { type LaidStart, type LayOut, pauseSpans, type ReplayedRun, replayStarts, visitStarts } from './replay-starts.js';
import type { SettingsFact } from './settings-fact.js';
import { type FactInForce, settingsTimeline } from './settings-timeline.js';

const MINUTES_PER_DAY = 1440;

/** Why a day cannot be replayed: nothing known, or a controller that computes its own run times. */
export type UnknownDay = 'settings-not-known' | 'settings-from-weather';

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

/**
 * One station's replay: minutes and begun runs per local day (null on an unknown day), their sums over the days that are known, and the
 * programs that ran it.
 */
export interface StationReplay {
  readonly minutes: readonly (number | null)[];
  readonly runs: readonly (number | null)[];
  readonly totalMinutes: number;
  readonly totalRuns: number;
  readonly programs: readonly string[];
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
 * @throws {DomainError} `WALL_TIME_INVALID`, `SETTINGS_OUT_OF_DOMAIN`, `PROGRAM_DAYS_INVALID` or `MONTHLY_ADJUST_INVALID` on bad settings.
 */
export function replayController(input: ReplayInput): ControllerReplay {
  const timeline = settingsTimeline(input.facts, input.clockChanges);
  const midnights = Array.from({ length: input.days + 1 }, (_, day) => elapsedMinutes(input.firstDay + day, 0, input.clockChanges));
  const pauses = pauseSpans(input.pauses, input.clockChanges);
  const unknown = midnights.slice(0, -1).map((begin, day) => {
    const end = midnights[day + 1] as number;
    return pauses.some(({ from, until }) => from <= begin && end <= until) ? null : unknownDay(timeline, begin, end);
  });
  const found = new Map<number, StationDays>();
  const stationOf = (station: number): StationDays => {
    const present = found.get(station) ?? noDays(input.days);
    found.set(station, present);
    return present;
  };
  // Starts are in order; only where several run at once their runs may not be, and two may hold one valve open.
  if ((input.traits.runsAtOnce ?? 1) < 2) visitStarts(input, timeline, addingStarts(midnights, stationOf));
  else for (const run of inOrder(replayStarts(input, timeline))) addRun(run, midnights, stationOf(run.station));
  const stations = new Map<number, StationReplay>();
  for (const [station, days] of found) stations.set(station, stationReplay(days, unknown));
  return { unknown, stations };
}

function stationReplay({ minutes, runs, programs }: StationDays, unknown: readonly (UnknownDay | null)[]): StationReplay {
  let [totalMinutes, totalRuns] = [0, 0];
  let allKnown = true;
  for (let day = 0; day < unknown.length; day += 1) {
    if (unknown[day] === null) {
      totalMinutes += minutes[day] as number;
      totalRuns += runs[day] as number;
    } else allKnown = false;
  }
  const known = (values: readonly number[]) => (allKnown ? values : values.map((value, day) => (unknown[day] === null ? value : null)));
  return { minutes: known(minutes), runs: known(runs), totalMinutes, totalRuns, programs: [...programs].sort() };
}

interface StationDays {
  readonly minutes: number[];
  readonly runs: number[];
  readonly programs: Set<string>;
  openUntil: number;
}

function noDays(days: number): StationDays {
  const zeros = () => new Array<number>(days).fill(0);
  return { minutes: zeros(), runs: zeros(), programs: new Set(), openUntil: Number.NEGATIVE_INFINITY };
}

function inOrder(runs: readonly ReplayedRun[]): readonly ReplayedRun[] {
  return [...runs].sort((a, b) => a.begin - b.begin);
}

function addRun(run: ReplayedRun, midnights: readonly number[], station: StationDays): void {
  // Programs that run together may both open one valve.
  const begin = Math.max(run.begin, station.openUntil);
  station.openUntil = Math.max(begin, run.end);
  const day = dayOf(midnights, begin);
  if (spread(station.minutes, midnights, day, [begin, run.end])) station.programs.add(run.program);
  if (run.first && day >= 0 && day < station.runs.length) station.runs[day] = (station.runs[day] ?? 0) + 1;
}

// A start that begins and ends on one day, which nearly all do, adds as much to its stations as every other of its kind.
function addingStarts(midnights: readonly number[], stationOf: (station: number) => StationDays): (start: LaidStart) => void {
  const known = new Map<LayOut, readonly (readonly [StationDays, number])[]>();
  const stationsOf = ({ program, layOut }: LaidStart) => {
    const present = known.get(layOut);
    if (present) return present;
    const stations = layOut.stations.map(({ station, minutes }) => [stationOf(station), minutes] as const);
    for (const [station] of stations) station.programs.add(program);
    known.set(layOut, stations);
    return stations;
  };
  return (start) => {
    const { program, begin, stop, layOut } = start;
    const day = dayOf(midnights, begin);
    if (day >= 0 && day < midnights.length - 1 && begin + layOut.end <= Math.min(stop, midnights[day + 1] as number)) {
      for (const [station, minutes] of stationsOf(start)) {
        station.minutes[day] = (station.minutes[day] as number) + minutes;
        station.runs[day] = (station.runs[day] as number) + 1;
      }
      return;
    }
    for (const segment of layOut.segments) {
      const [from, end] = [begin + segment.begin, Math.min(begin + segment.end, stop)];
      if (end > from)
        addRun({ station: segment.station, program, begin: from, end, first: segment.first }, midnights, stationOf(segment.station));
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

// Tells whether the segment, which begins on the day given, touched any of the days.
function spread(minutes: number[], midnights: readonly number[], from: number, [begin, end]: readonly [number, number]): boolean {
  let touched = false;
  for (let day = Math.max(0, from); day < minutes.length && (midnights[day] as number) < end; day += 1) {
    const overlap = Math.min(end, midnights[day + 1] as number) - Math.max(begin, midnights[day] as number);
    if (overlap <= 0) continue;
    minutes[day] = (minutes[day] as number) + overlap;
    touched = true;
  }
  return touched;
}
