import type { ClockChange } from '../../calendar/clock-change.js';
import { elapsedMinutesOfWallTime } from '../../calendar/elapsed-minutes.js';
import type { SettingsFact } from '../settings-fact.js';

/** A settings fact with the span in which it is in force, in elapsed minutes. */
export interface FactInForce {
  readonly fact: SettingsFact;
  readonly from: number;
  readonly until: number;
}

/**
 * The facts that are replayed, in order, each in force until the next: found and left, never planned.
 *
 * Of two at the same minute the one left stands above the one found.
 *
 * @param facts - All facts of one controller, in any order. [code]
 * @param clockChanges - The place's changes of clock, in order of time. [code]
 * @returns Facts with their spans, in order of time; before the first nothing is known. [min]
 * @throws {DomainError} `WALL_TIME_INVALID` when a fact's time cannot be read.
 */
export function settingsTimeline(facts: readonly SettingsFact[], clockChanges: readonly ClockChange[]): readonly FactInForce[] {
  const rank = (fact: SettingsFact) => (fact.record === 'left' ? 1 : 0);
  const dated = facts
    .filter((fact) => fact.record !== 'planned')
    .map((fact) => ({ fact, from: elapsedMinutesOfWallTime(fact.effectiveAt, clockChanges) }))
    .sort((a, b) => a.from - b.from || rank(a.fact) - rank(b.fact));
  return dated
    .map(({ fact, from }, index) => ({ fact, from, until: dated[index + 1]?.from ?? Number.POSITIVE_INFINITY }))
    .filter(({ from, until }) => until > from);
}
