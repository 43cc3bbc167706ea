import type { EvidenceRun } from '../../evidence/meter-evidence.js';

/**
 * The place of the first run that begins at a minute or later.
 *
 * @param runs - Runs in order of their begin. [min]
 * @param minute - Elapsed minute. [min]
 * @returns Its index; their number where all begin before. [–]
 */
export function firstBeginningAt(runs: readonly EvidenceRun[], minute: number): number {
  let [low, high] = [0, runs.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((runs[middle] as EvidenceRun).begin < minute) low = middle + 1;
    else high = middle;
  }
  return low;
}
