import type { ClockChange } from '../../calendar/clock-change.js';
import { elapsedMinutes, elapsedMinutesOfWallTime } from '../../calendar/elapsed-minutes.js';
import { dateOfDayNumber } from '../../calendar/local-date.js';
import type { ControllerTraits } from '../controller-traits.js';
import { layOutStart, type StationSegment } from './lay-out-start.js';
import { percentInForce } from './percent-in-force.js';
import { programStartsOn } from './program-starts-on.js';
import type { RainPause } from '../rain-pause.js';
import type { Program } from '../settings-fact.js';
import type { FactInForce } from './settings-timeline.js';

/** A start may spill over midnight, and a queue of late programs over another: runs are looked for from this many days before. */
export const DAYS_BEFORE = 2;

/** A valve open for a time, in elapsed minutes; `first` marks a station's first cycle of a start. */
export interface ReplayedRun {
  readonly station: number;
  readonly program: string;
  readonly begin: number;
  readonly end: number;
  readonly first: boolean;
}

/** What `replayStarts` reads besides the timeline; on `daysWithoutStarts` (day numbers) a rain sensor holds every start back. */
export interface StartsInput {
  readonly firstDay: number;
  readonly days: number;
  readonly pauses: readonly RainPause[];
  readonly traits: ControllerTraits;
  readonly clockChanges: readonly ClockChange[];
  readonly daysWithoutStarts?: ReadonlySet<number>;
}

/** A span of elapsed minutes. */
export interface Span {
  readonly from: number;
  readonly until: number;
}

/** What one start of a program does; `first` marks the first cycle of a station, `stations` sums each station's cycles. */
export interface LayOut {
  readonly segments: readonly (StationSegment & { readonly first: boolean })[];
  readonly stations: readonly { readonly station: number; readonly minutes: number }[];
  readonly end: number;
}

/** A start that happens at an elapsed minute; what is after `stop` does not run. */
export interface LaidStart {
  readonly program: string;
  readonly begin: number;
  readonly stop: number;
  readonly layOut: LayOut;
}

interface Start {
  readonly at: number;
  readonly monthIndex: number;
  readonly program: Program;
}

/**
 * All runs of a controller over some days: every start of every program, one after the other where the controller runs one at once.
 *
 * A start that finds the controller busy waits, of two at one instant the program that comes later by name; the same start twice in a
 * program is one. A start within a pause or on a day without starts does not happen; a pause or a change to a state other than on ends
 * whatever runs. A change of programs leaves a run that has begun as it was.
 *
 * @param input - Days, pauses, traits and changes of clock. [code]
 * @param timeline - The facts in force, in order of time. [min]
 * @returns Runs in order of their starts, in elapsed minutes. [min]
 * @throws {DomainError} `WALL_TIME_INVALID`, `SETTINGS_OUT_OF_DOMAIN`, `PROGRAM_DAYS_INVALID` or `MONTHLY_ADJUST_INVALID` on bad settings.
 */
export function replayStarts(input: StartsInput, timeline: readonly FactInForce[]): readonly ReplayedRun[] {
  const runs: ReplayedRun[] = [];
  visitStarts(input, timeline, ({ program, begin, stop, layOut }) => {
    for (const segment of layOut.segments) {
      const end = Math.min(begin + segment.end, stop);
      if (end > begin + segment.begin)
        runs.push({ station: segment.station, program, begin: begin + segment.begin, end, first: segment.first });
    }
  });
  return runs;
}

/**
 * The same starts one by one, as they are laid out, for whoever adds them up.
 *
 * @param input - Days, pauses, traits and changes of clock. [code]
 * @param timeline - The facts in force, in order of time. [min]
 * @param visit - Is told of each start that happens, in order. [min]
 * @returns Nothing. [–]
 * @throws {DomainError} As `replayStarts`.
 */
export function visitStarts(input: StartsInput, timeline: readonly FactInForce[], visit: (start: LaidStart) => void): void {
  const pauses = pauseSpans(input.pauses, input.clockChanges);
  const stops = [...pauses.map(({ from }) => from), ...timeline.filter(({ fact }) => fact.state !== 'on').map(({ from }) => from)];
  const freeAt = new Array<number>(Math.max(1, Math.floor(input.traits.runsAtOnce ?? 1))).fill(Number.NEGATIVE_INFINITY);
  for (const start of startsOf(input, timeline)) {
    if (pauses.some(({ from, until }) => from <= start.at && start.at < until)) continue;
    let stop = Number.POSITIVE_INFINITY;
    for (const at of stops) if (at > start.at && at < stop) stop = at;
    const lane = freeAt.length === 1 ? 0 : freeAt.indexOf(Math.min(...freeAt));
    const begin = Math.max(start.at, freeAt[lane] as number);
    const layOut = layOutOf(start, input.traits);
    visit({ program: start.program.name, begin, stop, layOut });
    freeAt[lane] = Math.max(begin, Math.min(begin + layOut.end, stop));
  }
}

/**
 * Rain pauses on the line of elapsed minutes.
 *
 * @param pauses - Pauses in the property's wall time. [code]
 * @param clockChanges - The place's changes of clock, in order of time. [code]
 * @returns Their spans; one without an end has none. [min]
 * @throws {DomainError} `WALL_TIME_INVALID` when a time cannot be read.
 */
export function pauseSpans(pauses: readonly RainPause[], clockChanges: readonly ClockChange[]): readonly Span[] {
  return pauses.map(({ from, until }) => ({
    from: elapsedMinutesOfWallTime(from, clockChanges),
    until: until === null ? Number.POSITIVE_INFINITY : elapsedMinutesOfWallTime(until, clockChanges),
  }));
}

function startsOf(input: StartsInput, timeline: readonly FactInForce[]): readonly Start[] {
  const starts: Start[] = [];
  let isInOrder = true;
  const add = (start: Start) => {
    const last = starts.at(-1);
    isInOrder &&= last === undefined || inOrder(last, start) <= 0;
    starts.push(start);
  };
  // Only the percents of a table by month ask for the month.
  const hasMonths = input.traits.monthlyAdjustPercent !== null;
  let next = elapsedMinutes(input.firstDay - DAYS_BEFORE, 0, input.clockChanges);
  for (let day = input.firstDay - DAYS_BEFORE; day < input.firstDay + input.days; day += 1) {
    const midnight = next;
    next = elapsedMinutes(day + 1, 0, input.clockChanges);
    if (input.daysWithoutStarts?.has(day)) continue;
    const monthIndex = hasMonths ? Number(dateOfDayNumber(day).slice(5, 7)) - 1 : 0;
    for (const each of timeline)
      if (each.fact.state === 'on' && each.from < next && each.until > midnight)
        addStartsOfDay(each, { day, monthIndex }, input.clockChanges, add);
  }
  return isInOrder ? starts : starts.sort(inOrder);
}

function addStartsOfDay(
  { fact, from, until }: FactInForce,
  { day, monthIndex }: { readonly day: number; readonly monthIndex: number },
  clockChanges: readonly ClockChange[],
  add: (start: Start) => void,
): void {
  for (const program of fact.programs) {
    if (!programStartsOn(program.days, day)) continue;
    for (const minute of program.starts.length > 1 ? new Set(program.starts) : program.starts) {
      const at = elapsedMinutes(day, minute, clockChanges);
      if (from <= at && at < until) add({ at, monthIndex, program });
    }
  }
}

function inOrder(a: Start, b: Start): number {
  return a.at - b.at || byName(a, b);
}

function byName(a: Start, b: Start): number {
  return Number(a.program.name > b.program.name) - Number(a.program.name < b.program.name);
}

interface KnownLayOut {
  readonly percent: number;
  readonly minuteStep: number | null;
  readonly maxMinutes: number | null;
  readonly layOut: LayOut;
}

/** Every start of a program at one percent runs alike, in this month and in others: it is laid out once. */
const laidOut = new WeakMap<Program, KnownLayOut[]>();

function layOutOf({ program, monthIndex }: Start, traits: ControllerTraits): LayOut {
  const percent = percentInForce(program.adjustPercent, traits, monthIndex);
  const { minuteStep, maxMinutes } = traits;
  const known = laidOut.get(program) ?? [];
  for (const each of known)
    if (each.percent === percent && each.minuteStep === minuteStep && each.maxMinutes === maxMinutes) return each.layOut;
  const layOut = summed(layOutStart(program.stations, percent, traits));
  known.push({ percent, minuteStep, maxMinutes, layOut });
  laidOut.set(program, known);
  return layOut;
}

function summed(segments: readonly StationSegment[]): LayOut {
  const minutes = new Map<number, number>();
  const marked = segments.map((segment) => {
    const before = minutes.get(segment.station);
    minutes.set(segment.station, (before ?? 0) + segment.end - segment.begin);
    const { station, begin, end } = segment;
    return { station, begin, end, first: before === undefined };
  });
  const end = segments.reduce((last, segment) => Math.max(last, segment.end), 0);
  return { segments: marked, stations: Array.from(minutes, ([station, sum]) => ({ station, minutes: sum })), end };
}
