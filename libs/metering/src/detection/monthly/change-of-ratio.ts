import { type IntervalVolumes, together } from './interval-volumes.js';
import { innovationOf, type MeterHabit, noiseSd } from './meter-habit.js';
import { FEWEST_READINGS, monthlyLimits, pairLimit } from './monthly-limits.js';

/** A meter that passes less than this share of what it should does not deliver; in one reading alone, less than this: common practice. */
const WELL_UNDER = 0.7;
const WELL_UNDER_AT_ONCE = 0.5;

/** The reading before is counted to a change when it was beyond this itself. */
const ALREADY_SCORE = 1;

/** What is known when an interval comes in: the habit, that before the last reading was learnt, and the sum that grows by slow changes. */
export interface WatchedRatio {
  readonly habit: MeterHabit;
  readonly before: MeterHabit;
  readonly previous: IntervalVolumes | null;
  readonly growth: number;
  readonly grownFrom: { readonly habit: MeterHabit; readonly localDay: number };
  readonly volumes: IntervalVolumes;
}

/** A change of the ratio: of what kind, seen by which test, since when, and the habit that it left. */
export interface RatioChange {
  readonly kind: 'unexplained use' | 'not delivering';
  readonly sign: 1 | -1;
  readonly signal: 'one reading' | 'two readings' | 'slow growth';
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
  readonly habit: MeterHabit;
  readonly suspect: IntervalVolumes;
  readonly fromLocalDay: number;
}

/**
 * Whether an interval, alone, with the one before it or with all since growth began, shows a change of metered against programmed.
 *
 * @param watched - What is known, and the interval. [L]
 * @returns The change; a ratio that became less without failing; or null. [code]
 */
export function changeOf(watched: WatchedRatio): RatioChange | LesserRatio | null {
  const beforeHabit = watched.habit.taught < FEWEST_READINGS;
  const alone = one(watched);
  const limit = beforeHabit ? monthlyLimits.beforeHabit : monthlyLimits.single;
  const pair = beforeHabit ? null : two(watched);
  const beyondPair = pair && Math.abs(pair.score) > pairLimit(noiseSd(pair.habit)) ? pair : null;
  const more = [beyondPair, alone.score > limit ? alone : null, grown(watched)].find((tested) => tested && tested.score > 0);
  if (more) return { ...more, kind: 'unexplained use', sign: 1, lackShare: 0, beforeHabit };
  return less(beyondPair, -alone.score > limit ? alone : null, beforeHabit);
}

function less(pair: Tested | null, alone: Tested | null, beforeHabit: boolean): RatioChange | LesserRatio | null {
  const delivering = (tested: Tested) => tested.suspect.metered / innovationOf(tested.habit, tested.suspect).expected;
  const told = (tested: Tested): RatioChange => ({
    ...tested,
    kind: 'not delivering',
    sign: -1,
    lackShare: 1 - Math.max(0, delivering(tested)),
    beforeHabit,
  });
  if (alone && delivering(alone) < WELL_UNDER_AT_ONCE) return told(alone);
  if (!pair || -pair.score < monthlyLimits.single) return null;
  return delivering(pair) < WELL_UNDER ? told(pair) : { kind: 'relearn' };
}

function one({ habit, volumes }: WatchedRatio): Tested {
  const { score } = innovationOf(habit, volumes);
  return { signal: 'one reading', score, habit, suspect: volumes, fromLocalDay: volumes.fromLocalDay };
}

// Where only the newer of the two is off, the change began with it: where both are, before.
function two(watched: WatchedRatio): Tested | null {
  const { before, previous, volumes } = watched;
  if (previous === null || before.taught < FEWEST_READINGS) return null;
  const { score } = innovationOf(before, together(previous, volumes));
  const already = Math.sign(score) * innovationOf(before, previous).score > ALREADY_SCORE;
  // Too little must last: once may be a rain pause that nobody wrote down.
  if (score < 0 && !already) return null;
  const suspect = already ? together(previous, volumes) : volumes;
  return { signal: 'two readings', score, habit: before, suspect, fromLocalDay: suspect.fromLocalDay };
}

function grown({ growth, grownFrom, volumes }: WatchedRatio): Tested | null {
  if (growth <= monthlyLimits.decision) return null;
  return { signal: 'slow growth', score: growth, habit: grownFrom.habit, suspect: volumes, fromLocalDay: grownFrom.localDay };
}
