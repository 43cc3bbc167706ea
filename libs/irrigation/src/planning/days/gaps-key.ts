import type { DayPattern } from './day-pattern.js';

const DAYS_PER_WEEK = 7;

/**
 * Gaps of a pattern turned so that patterns that differ only by the weekday they begin on are alike.
 *
 * @param pattern - The pattern. [d]
 * @returns A key that such patterns share. [code]
 */
export function gapsKey(pattern: DayPattern): string {
  const { gaps } = pattern;
  const known = keys.get(gaps) ?? keyOf(gaps);
  keys.set(gaps, known);
  return known;
}

const keys = new WeakMap<readonly number[], string>();

function keyOf(gaps: readonly number[]): string {
  if (gaps.length > DAYS_PER_WEEK) return gaps.join();
  return gaps.map((_, at) => [...gaps.slice(at), ...gaps.slice(0, at)].join()).sort()[0] ?? '';
}
