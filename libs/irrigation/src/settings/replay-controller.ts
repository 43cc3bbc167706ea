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
  /** minutes per local day as the settings have them, whatever is not known of a day [min] */
  readonly laidMinutes: Float64Array;
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
  const midnights: number[] = [];
  for (let day = 0; day <= input.days; day += 1) midnights.push(elapsedMinutes(input.firstDay + day, 0, input.clockChanges));
  const unknown = unknownDays(midnights, timeline, pauseSpans(input.pauses, input.clockChanges));
  const days = new StationDays(input.days);
  // Starts are in order; only where several run at once their runs may not be, and two may hold one valve open.
  if ((input.traits.runsAtOnce ?? 1) < 2) visitStarts(input, timeline, addingStarts(midnights, days));
  else for (const run of inOrder(replayStarts(input, timeline))) addRun(run, midnights, days);
  return { unknown, stations: days.replays(unknown) };
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

/** Minutes and runs of all stations by day, a row for each station in one block. */
class StationDays {
  private readonly rows = new Map<number, number>();
  private readonly programs: string[][] = [];
  private readonly openUntil: number[] = [];
  minutes = new Float64Array(0);
  runs = new Float64Array(0);

  constructor(readonly days: number) {}

  // Where a station's days begin.
  rowOf(station: number): number {
    const present = this.rows.get(station);
    if (present !== undefined) return present * this.days;
    const row = this.rows.size;
    this.rows.set(station, row);
    this.programs.push([]);
    this.openUntil.push(Number.NEGATIVE_INFINITY);
    if ((row + 1) * this.days > this.minutes.length) {
      const [minutes, runs] = [this.minutes, this.runs];
      this.minutes = new Float64Array(2 * (row + LEAST_ROWS) * this.days);
      this.runs = new Float64Array(this.minutes.length);
      this.minutes.set(minutes);
      this.runs.set(runs);
    }
    return row * this.days;
  }

  ranBy(from: number, program: string): void {
    const programs = this.programs[from / this.days] as string[];
    if (!programs.includes(program)) programs.push(program);
  }

  // When a valve is free from a minute on; it is taken until another.
  take(from: number, begin: number, end: number): number {
    const row = from / this.days;
    const free = Math.max(begin, this.openUntil[row] as number);
    this.openUntil[row] = Math.max(free, end);
    return free;
  }

  replays(unknown: readonly (UnknownDay | null)[]): ReadonlyMap<number, StationReplay> {
    const allKnown = unknown.every((reason) => reason === null);
    const replays = new Map<number, StationReplay>();
    for (const [station, row] of this.rows) {
      const from = row * this.days;
      const of = { minutes: this.minutes, runs: this.runs, from, unknown };
      replays.set(station, new StationInDays(of, allKnown, (this.programs[row] as string[]).sort()));
    }
    return replays;
  }
}

const LEAST_ROWS = 12;

interface DaysOfStation {
  readonly minutes: Float64Array;
  readonly runs: Float64Array;
  readonly from: number;
  readonly unknown: readonly (UnknownDay | null)[];
}

/** One station's part of the block: the days are lists when somebody asks for them. */
class StationInDays implements StationReplay {
  readonly totalMinutes: number;
  readonly totalRuns: number;

  constructor(
    private readonly of: DaysOfStation,
    allKnown: boolean,
    readonly programs: readonly string[],
  ) {
    let [totalMinutes, totalRuns] = [0, 0];
    for (let day = 0; day < of.unknown.length; day += 1) {
      if (!allKnown && of.unknown[day] !== null) continue;
      totalMinutes += of.minutes[of.from + day] as number;
      totalRuns += of.runs[of.from + day] as number;
    }
    this.totalMinutes = totalMinutes;
    this.totalRuns = totalRuns;
  }

  get laidMinutes(): Float64Array {
    return this.of.minutes.subarray(this.of.from, this.of.from + this.of.unknown.length);
  }

  get minutes(): readonly (number | null)[] {
    return this.of.unknown.map((reason, day) => (reason === null ? (this.of.minutes[this.of.from + day] as number) : null));
  }

  get runs(): readonly (number | null)[] {
    return this.of.unknown.map((reason, day) => (reason === null ? (this.of.runs[this.of.from + day] as number) : null));
  }
}

function inOrder(runs: readonly ReplayedRun[]): readonly ReplayedRun[] {
  return [...runs].sort((a, b) => a.begin - b.begin);
}

function addRun(run: ReplayedRun, midnights: readonly number[], days: StationDays): void {
  const from = days.rowOf(run.station);
  // Programs that run together may both open one valve.
  const begin = days.take(from, run.begin, run.end);
  const day = dayOf(midnights, begin);
  if (spread(days, from, midnights, day, [begin, run.end])) days.ranBy(from, run.program);
  if (run.first && day >= 0 && day < days.days) days.runs[from + day] = (days.runs[from + day] as number) + 1;
}

// A start that begins and ends on one day, which nearly all do, adds as much to its stations as every other of its kind.
function addingStarts(midnights: readonly number[], days: StationDays): (start: LaidStart) => void {
  const known = new Map<LayOut, Int32Array>();
  const rowsOf = ({ program, layOut }: LaidStart) => {
    const present = known.get(layOut);
    if (present) return present;
    const rows = Int32Array.from(layOut.stations, ({ station }) => days.rowOf(station));
    for (const from of rows) days.ranBy(from, program);
    known.set(layOut, rows);
    return rows;
  };
  return (start) => {
    const { program, begin, stop, layOut } = start;
    const day = dayOf(midnights, begin);
    if (day >= 0 && day < midnights.length - 1 && begin + layOut.end <= Math.min(stop, midnights[day + 1] as number)) {
      const rows = rowsOf(start);
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

// Tells whether the segment, which begins on the day given, touched any of the days.
function spread(
  days: StationDays,
  row: number,
  midnights: readonly number[],
  from: number,
  [begin, end]: readonly [number, number],
): boolean {
  let touched = false;
  for (let day = Math.max(0, from); day < days.days && (midnights[day] as number) < end; day += 1) {
    const overlap = Math.min(end, midnights[day + 1] as number) - Math.max(begin, midnights[day] as number);
    if (overlap <= 0) continue;
    days.minutes[row + day] = (days.minutes[row + day] as number) + overlap;
    touched = true;
  }
  return touched;
}
