import { quantile } from '../steps/robust-spread.js';
import type { ChangeScore } from './change-scores.js';

/** Scores of the past by which a zone's own scale is known; the newest may be those of what is judged. */
const KEPT = 60;
const NEWEST = 13;
/** What is assumed of the scale before, and as how many scores that counts. Common practice, no source. */
const ASSUMED_SCALE = 1.1;
const ASSUMED_SCORES = 10;
/** Scores of days in a row are of the same flows learnt: a scale is not believed below this. Common practice, no source. */
const LEAST_SCALE = 0.5;
/** Nine of ten normal quantities are nearer to zero than so many standard deviations. */
const TAIL = 0.9;
const NORMAL_TAIL = 1.645;

/** Scores of the past, in standard deviations: by window and place of the zone. */
export type PastScores = Map<number, number[][]>;

/**
 * How far a meter's scores go beyond those of a model that is right: by zone, from its own past. A decision is as many times as large.
 *
 * scale² = (n · (q90 |z| / 1.645)² + 10 · 1.1²) / (n + 10), at least 0.5
 *
 * @param past - Scores of the past. [–]
 * @param window - Days of the window. [d]
 * @param places - Places of zones, and one for all of them. [–]
 * @returns Scale by place. [–]
 */
export function scalesOf(past: PastScores, window: number, places: number): readonly number[] {
  const ofWindow = past.get(window) ?? [];
  return Array.from({ length: places }, (_, place) => {
    const old = (ofWindow[place] ?? []).slice(0, -NEWEST);
    const own = old.length > 1 ? quantile(old, TAIL) / NORMAL_TAIL : 0;
    return Math.max(LEAST_SCALE, Math.sqrt((old.length * own ** 2 + ASSUMED_SCORES * ASSUMED_SCALE ** 2) / (old.length + ASSUMED_SCORES)));
  });
}

/**
 * Keeps the scores of a day.
 *
 * @param past - Scores of the past; they are changed. [–]
 * @param window - Days of the window. [d]
 * @param scores - Scores by place. [–]
 */
export function keepScores(past: PastScores, window: number, scores: readonly ChangeScore[]): void {
  const ofWindow = past.get(window) ?? scores.map(() => []);
  past.set(window, ofWindow);
  scores.forEach(({ change, sd }, place) => {
    if (!Number.isFinite(sd)) return;
    const own = (ofWindow[place] ??= []);
    own.push(Math.abs(change) / sd);
    if (own.length > KEPT + NEWEST) own.shift();
  });
}
