import { dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import { replayController } from '@rillbook/irrigation/settings/replay/replay-controller.js';
import type { Program, StationRun } from '@rillbook/irrigation/settings/settings-fact.js';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { left, program, replayOf } from './a-replay.js';

const DAYS = 3;
const DAY = 1440;
const FIRST_DAY = dayNumberOfDate('2026-06-01');

const stationRuns = (soaks: fc.Arbitrary<number>): fc.Arbitrary<readonly StationRun[]> =>
  fc.array(
    fc.record({
      station: fc.integer({ min: 1, max: 3 }),
      // Twelve parts of any number of cycles are whole minutes.
      minutes: fc.integer({ min: 0, max: 20 }).map((twelves) => 12 * twelves),
      cycles: fc.integer({ min: 1, max: 4 }),
      soakMinutes: soaks,
    }),
    { minLength: 1, maxLength: 3 },
  );

const programNamed = (name: string, soaks: fc.Arbitrary<number>): fc.Arbitrary<Program> =>
  fc
    .record({ starts: fc.uniqueArray(fc.integer({ min: 0, max: DAY - 1 }), { minLength: 1, maxLength: 2 }), stations: stationRuns(soaks) })
    .map((changes) => program({ name, ...changes }));

const twoDigits = (value: number) => String(value).padStart(2, '0');

/** A wall time so many minutes after the midnight that begins 1 June 2026. */
const wallTime = (minute: number) =>
  `2026-06-${twoDigits(1 + Math.floor(minute / DAY))}T${twoDigits(Math.floor((minute % DAY) / 60))}:${twoDigits(minute % 60)}`;

const pause = fc
  .tuple(fc.integer({ min: 0, max: DAYS * DAY }), fc.integer({ min: 1, max: 600 }))
  .map(([from, length]) => ({ from, until: from + length }));

interface Step {
  readonly station: number;
  readonly line: number;
  readonly soak: number;
  left: number;
}

/** A program that runs: its steps in order, when each line's soak is over, and the stations that it has opened. */
interface Running {
  readonly steps: Step[];
  readonly ready: Map<number, number>;
  readonly seen: Set<number>;
}

interface Valve {
  readonly minutes: number[];
  readonly runs: number[];
}

interface Pause {
  readonly from: number;
  readonly until: number;
}

/** Round after round of cycles, each with its share of the minutes. */
const stepsOf = ({ stations }: Program): Step[] =>
  [0, 1, 2, 3].flatMap((round) =>
    stations.flatMap(({ station, minutes, cycles, soakMinutes }, line) =>
      round < cycles && minutes > 0 ? [{ station, line, soak: soakMinutes, left: minutes / cycles }] : [],
    ),
  );

/** The next program with water of those that wait; programs without pass at once. */
function nextOf(waiting: Program[]): Running | null {
  for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) {
    const steps = stepsOf(next);
    if (steps.length > 0) return { steps, ready: new Map(), seen: new Set() };
  }
  return null;
}

/** One minute of a program: its next step waters, unless it soaks. */
function water({ steps, ready, seen }: Running, minute: number, valves: Map<number, Valve>): void {
  const step = steps[0];
  if (!step || minute < (ready.get(step.line) ?? Number.NEGATIVE_INFINITY)) return;
  const valve = valves.get(step.station) ?? { minutes: [], runs: [] };
  valves.set(step.station, valve);
  if (!seen.has(step.station)) valve.runs.push(minute);
  seen.add(step.station);
  valve.minutes.push(minute);
  step.left -= 1;
  if (step.left > 0) return;
  ready.set(step.line, minute + 1 + step.soak);
  steps.shift();
}

/** The same by one clock that ticks each minute: what waits, what is open, what a pause ends. */
function ticked(programs: readonly Program[], pauses: readonly Pause[]): ReadonlyMap<number, Valve> {
  const valves = new Map<number, Valve>();
  const waiting: Program[] = [];
  let now: Running | null = null;
  for (let minute = -2 * DAY; minute < DAYS * DAY; minute += 1) {
    const clock = ((minute % DAY) + DAY) % DAY;
    const isPaused = pauses.some(({ from, until }) => from <= minute && minute < until);
    if (!isPaused) waiting.push(...programs.filter(({ starts }) => starts.includes(clock)));
    // What runs ends and what waits does not come.
    if (pauses.some(({ from }) => from === minute)) {
      now = null;
      waiting.length = 0;
    }
    if (now === null || now.steps.length === 0) now = nextOf(waiting);
    if (now) water(now, minute, valves);
  }
  return valves;
}

const perDay = (minutes: Iterable<number>) => {
  const days = new Array<number>(DAYS).fill(0);
  for (const minute of minutes) {
    const day = Math.floor(minute / DAY);
    if (day >= 0) days[day] = (days[day] as number) + 1;
  }
  return days;
};

function holds(programs: readonly Program[], pauses: readonly Pause[]): void {
  const wallTimes = pauses.map(({ from, until }) => ({ from: wallTime(from), until: wallTime(until) }));
  const replay = replayController(replayOf([left(programs)], { days: DAYS, firstDay: FIRST_DAY, pauses: wallTimes }));
  const opened = [...ticked(programs, pauses)].filter(([, { minutes }]) => minutes.some((minute) => minute >= 0));
  expect([...replay.stations.keys()].sort()).toEqual(opened.map(([station]) => station).sort());
  for (const [station, { minutes, runs }] of opened) {
    expect(replay.stations.get(station)?.minutes).toEqual(perDay(minutes));
    expect(replay.stations.get(station)?.runs).toEqual(perDay(runs));
  }
}

const two = (soaks: fc.Arbitrary<number>) => fc.tuple(programNamed('A', soaks), programNamed('B', soaks));

it('the replay is what a clock that ticks each minute does: programs wait, cycles soak', () => {
  fc.assert(
    fc.property(two(fc.integer({ min: 0, max: 60 })), (programs) => holds(programs, [])),
    { numRuns: 50 },
  );
});

it('a program that soaks when a pause begins holds the controller until then: what waits for it does not come', () => {
  const runs = (station: number, cycles: number) => [{ station, minutes: 12, cycles, soakMinutes: 60 }];
  const programs = [
    program({ name: 'A', starts: [300], stations: runs(1, 2) }),
    program({ name: 'B', starts: [305], stations: runs(2, 1) }),
  ];
  const { stations } = replayController(
    replayOf([left(programs)], { days: 1, firstDay: FIRST_DAY, pauses: [{ from: wallTime(330), until: wallTime(DAY) }] }),
  );
  expect([1, 2].map((station) => stations.get(station)?.minutes[0])).toEqual([6, 0]);
});

it('the replay is what a clock that ticks each minute does: pauses end what runs and what waits', () => {
  fc.assert(
    fc.property(two(fc.integer({ min: 0, max: 60 })), fc.array(pause, { minLength: 1, maxLength: 2 }), (programs, pauses) =>
      holds(programs, pauses),
    ),
    { numRuns: 50 },
  );
});
