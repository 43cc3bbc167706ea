import { type IntervalVolumes, monthOfReadings, together } from '../interval-volumes.js';
import type { MeterHabit } from '../habit/meter-habit.js';
import { innovationOf, noiseSd } from '../habit/teach-habit.js';
import { FEWEST_BEFORE_CHANGE, monthlyLimits, windowLimits } from '../monthly-limits.js';
import { windowScore } from './window-score.js';

/** A meter that passes less than this share of what it should does not deliver; in one reading alone, less than this: common practice. */
const WELL_UNDER = 0.7;
const WELL_UNDER_AT_ONCE = 0.5;

/** Too little is told of two readings when the first of them was low by this much itself. */
const ALREADY_SCORE = 1;

/** An interval that has taught, and the habit before it. */
export interface TaughtInterval {
  readonly habit: MeterHabit;
  readonly volumes: IntervalVolumes;
}

/** What is known when an interval comes in: the habit, the newest intervals that taught it, and the sum that grows by slow changes. */
export interface WatchedRatio {
  readonly habit: MeterHabit;
  readonly taught: readonly TaughtInterval[];
  readonly growth: number;
  readonly grownFrom: { readonly habit: MeterHabit; readonly localDay: number };
  readonly volumes: IntervalVolumes;
}

/** A change of the ratio: of what kind, seen by which test, since when, and the habit that it left. */
export interface RatioChange {
  readonly kind: 'unexplained use' | 'not delivering';
  readonly sign: 1 | -1;
  readonly signal: 'one reading' | 'two readings' | 'several readings' | 'slow growth';
  readonly score: number;
  readonly habit: MeterHabit;
  readonly suspect: IntervalVolumes;
  readonly fromLocalDay: number;
  /** What is lacking as a share of what was expected; for use that is too little. [–] */
  readonly lackShare: number;
  readonly beforeHabit: boolean;
}

/** A change that is nobody's work: less than usual, yet delivering. The ratio is learnt anew. */
export interface LesserRatio {
  readonly kind: 'relearn';
}

interface Tested {
  readonly signal: RatioChange['signal'];
  readonly score: number;
  readonly limit: number;
  readonly habit: MeterHabit;
  readonly suspect: IntervalVolumes;
  readonly fromLocalDay: number;
}

/**
 * Whether an interval, alone, with those before it or with all since growth began, shows a change of metered against programmed.
 *
 * @param watched - What is known, and the interval. [L]
 * @returns The change; a ratio that became less without failing; or null. [code]
 */
export function changeOf(watched: WatchedRatio): RatioChange | LesserRatio | null {
  const beforeHabit = watched.habit.taught < FEWEST_BEFORE_CHANGE;
  const windows = beforeHabit ? [atFirst(watched)] : windowsOf(watched);
  const beyond = windows.filter(({ score, limit }) => Math.abs(score) > limit);
  const more = [...beyond.filter(({ score }) => score > 0), grown(watched)].find((tested) => tested !== null);
  if (more) return { ...more, kind: 'unexplained use', sign: 1, lackShare: 0, beforeHabit };
  // A week without water is a pause that nobody wrote down.
  const lasting = windows.filter(({ fromLocalDay }) => watched.volumes.toLocalDay - fromLocalDay >= monthOfReadings);
  return less(lasting.slice(0, 2), beforeHabit);
}

function less([alone, pair]: readonly Tested[], beforeHabit: boolean): RatioChange | LesserRatio | null {
  const delivering = (tested: Tested) => tested.suspect.metered / innovationOf(tested.habit, tested.suspect).expected;
  const told = (tested: Tested): RatioChange => ({
    ...tested,
    kind: 'not delivering',
    sign: -1,
    lackShare: 1 - Math.max(0, delivering(tested)),
    beforeHabit,
  });
  if (alone && -alone.score > Math.max(alone.limit, monthlyLimits.single) && delivering(alone) < WELL_UNDER_AT_ONCE) return told(alone);
  if (!pair || -pair.score < monthlyLimits.single) return null;
  return delivering(pair) < WELL_UNDER ? told(pair) : { kind: 'relearn' };
}

function atFirst({ habit, volumes }: WatchedRatio): Tested {
  const { score } = innovationOf(habit, volumes);
  const limit = monthlyLimits.beforeHabit;
  return { signal: 'one reading', score, limit, habit, suspect: volumes, fromLocalDay: volumes.fromLocalDay };
}

const SIGNALS = { 1: 'one reading', 2: 'two readings' } as const;

// One reading first, then two, then more, as far back as the habit before them was one.
function windowsOf(watched: WatchedRatio): readonly Tested[] {
  return windowLimits(noiseSd(watched.habit), watched.volumes.days).flatMap(([readings, limit]) => {
    const older = watched.taught.slice(watched.taught.length - readings + 1);
    if (readings > 1 && older.length < readings - 1) return [];
    const habit = older[0]?.habit ?? watched.habit;
    if (readings > 1 && habit.taught < FEWEST_BEFORE_CHANGE) return [];
    const intervals = [...older.map(({ volumes }) => volumes), watched.volumes];
    const { score, firstShare } = windowScore(habit, intervals);
    return tested({ score, firstShare, limit, habit, intervals, signal: SIGNALS[readings as 1 | 2] ?? 'several readings' });
  });
}

// Too little must last: once may be a rain pause that nobody wrote down.
function tested({ score, firstShare, limit, habit, intervals, signal }: ScoredWindow): readonly Tested[] {
  const [first, ...rest] = intervals;
  const began = firstShare === 1 && first ? first : (rest[0] ?? first);
  if (!first || !began || (score < 0 && rest.length && innovationOf(habit, first).score > -ALREADY_SCORE)) return [];
  const [begin, ...more] = began === first ? intervals : rest;
  const suspect = more.reduce((sum, next) => together(sum, next), begin as IntervalVolumes);
  return [{ signal, score, limit, habit, suspect, fromLocalDay: first.fromLocalDay }];
}

interface ScoredWindow {
  readonly score: number;
  readonly firstShare: number;
  readonly limit: number;
  readonly habit: MeterHabit;
  readonly intervals: readonly IntervalVolumes[];
  readonly signal: RatioChange['signal'];
}

function grown({ growth, grownFrom, volumes }: WatchedRatio): Tested | null {
  const limit = monthlyLimits.decision;
  if (growth <= limit) return null;
  return { signal: 'slow growth', score: growth, limit, habit: grownFrom.habit, suspect: volumes, fromLocalDay: grownFrom.localDay };
}
