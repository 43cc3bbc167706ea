import { changeOf, type RatioChange, type TaughtInterval } from './change-of-ratio.js';
import { type MeterHabit, raised } from '../habit/meter-habit.js';
import { innovationOf, taughtBy } from '../habit/teach-habit.js';
import type { IntervalVolumes } from '../interval-volumes.js';
import { MOST_TOGETHER } from '../monthly-limits.js';

/** A finding opens anew when it has grown by this share at least: as much as a dismissal is believed for. An assumption. */
const GROWN_SHARE = 0.5;

/** A meter passes at most as much again for what runs: beyond that it is water of its own. An assumption. */
const MOST_SHARE = 1;

/** What a meter passes while a change of it is open: the habit before the change, the one with it, and the newest intervals that taught that. */
export interface Grown {
  readonly before: MeterHabit;
  readonly habit: MeterHabit;
  readonly taught: readonly TaughtInterval[];
}

/**
 * What is expected of a meter from the interval that opened a change on.
 *
 * @param change - The change. [L]
 * @returns The habit with what was added: so much a day, or so large a share, as far as that interval tells. [code]
 */
export function sinceOpened(change: RatioChange): Grown {
  const { habit, suspect } = change;
  const { excess, expected } = innovationOf(habit, suspect);
  const share = expected > 0 ? Math.min(MOST_SHARE, Math.abs(excess) / expected) : 0;
  const open = raised(habit, { share, litresPerDay: excess / suspect.days });
  return { before: habit, habit: taughtBy(open, suspect), taught: [] };
}

/**
 * The same after a further interval that shows the change.
 *
 * @param grown - What was known before. [code]
 * @param volumes - The interval. [L]
 * @returns What is known after it. [code]
 */
export function stillGrown(grown: Grown, volumes: IntervalVolumes): Grown {
  const { before, habit, taught } = grown;
  return { before, habit: taughtBy(habit, volumes), taught: [...taught, { habit, volumes }].slice(-MOST_TOGETHER) };
}

/**
 * Whether a further cause came to one that is open: beyond chance, and at least half as large as what is open.
 *
 * @param grown - What is known of the open one. [code]
 * @param volumes - The next interval. [L]
 * @returns The change of both together against the habit before the first, from the interval on that shows it; or null. [L]
 */
export function grownAnew(grown: Grown, volumes: IntervalVolumes): RatioChange | null {
  const { before, habit, taught } = grown;
  const more = changeOf({ habit, taught, growth: 0, grownFrom: { habit, localDay: volumes.fromLocalDay }, volumes });
  if (more?.kind !== 'unexplained use') return null;
  const open = innovationOf(more.habit, more.suspect);
  const wasOpen = open.expected - innovationOf(before, more.suspect).expected;
  return open.excess >= GROWN_SHARE * wasOpen ? { ...more, habit: before } : null;
}
