import type { ClockChange } from '../calendar/clock-change.js';
import { elapsedMinutes } from '../calendar/elapsed-minutes.js';
import type { ControllerTraits } from './controller-traits.js';
import type { RainPause } from './rain-pause.js';
import { pauseSpans, type ReplayedRun, replayStarts } from './replay-starts.js';
import type { SettingsFact } from './settings-fact.js';
import { type FactInForce, settingsTimeline } from './settings-timeline.js';

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

/** One station's replay: minutes and begun runs per local day (null on an unknown day), and the programs that ran it. */
export interface StationReplay {
  readonly minutes: readonly (number | null)[];
  readonly runs: readonly (number | null)[];
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
  const found = new Map<number, { minutes: number[]; runs: number[]; programs: Set<string> }>();
  const zeros = () => new Array<number>(input.days).fill(0);
  for (const run of openOnce(replayStarts(input, timeline))) {
    const station = found.get(run.station) ?? { minutes: zeros(), runs: zeros(), programs: new Set<string>() };
    found.set(run.station, station);
    if (spread(station.minutes, midnights, run.begin, run.end)) station.programs.add(run.program);
    const day = midnights.findIndex((midnight, index) => midnight <= run.begin && run.begin < (midnights[index + 1] ?? midnight));
    if (run.first && day >= 0) station.runs[day] = (station.runs[day] ?? 0) + 1;
  }
  const known = (values: readonly number[]) => values.map((value, day) => (unknown[day] === null ? value : null));
  const stations = [...found].map(
    ([station, { minutes, runs, programs }]) =>
      [station, { minutes: known(minutes), runs: known(runs), programs: [...programs].sort() }] as const,
  );
  return { unknown, stations: new Map(stations) };
}

// Programs that run together may both open one valve.
function openOnce(runs: readonly ReplayedRun[]): readonly ReplayedRun[] {
  const openUntil = new Map<number, number>();
  return [...runs]
    .sort((a, b) => a.begin - b.begin)
    .map((run) => {
      const begin = Math.max(run.begin, openUntil.get(run.station) ?? run.begin);
      openUntil.set(run.station, Math.max(begin, run.end));
      return { ...run, begin };
    });
}

function unknownDay(timeline: readonly FactInForce[], begin: number, end: number): UnknownDay | null {
  if ((timeline[0]?.from ?? Number.POSITIVE_INFINITY) > begin) return 'settings-not-known';
  const states = timeline.filter(({ from, until }) => from < end && until > begin).map(({ fact }) => fact.state);
  if (states.includes('unknown')) return 'settings-not-known';
  return states.includes('weather') ? 'settings-from-weather' : null;
}

// Tells whether the segment touched any of the days.
function spread(minutes: number[], midnights: readonly number[], begin: number, end: number): boolean {
  let touched = false;
  for (let day = 0; day < minutes.length; day += 1) {
    const overlap = Math.min(end, midnights[day + 1] as number) - Math.max(begin, midnights[day] as number);
    if (overlap <= 0) continue;
    minutes[day] = (minutes[day] as number) + overlap;
    touched = true;
  }
  return touched;
}
