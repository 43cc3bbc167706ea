import type { FindingCandidate } from './finding-candidate.js';

/** An excess counts as explained when other findings account for at least this share of it: common practice. */
const EXPLAINED_SHARE = 0.5;

/**
 * The family of causes by which one meter passes too much: overwatered becomes over-programmed or unexplained use within it.
 *
 * @param meterId - The meter. [code]
 * @returns The family, which is also the key of kinds that are about the meter as a whole. [code]
 */
export function excessFamily(meterId: string): string {
  return `excess meter:${meterId}`;
}

/**
 * Whether findings already explain an excess, so that it opens no second one.
 *
 * @param excessLitres - The excess. [L]
 * @param others - Candidates that explain water: only those with an excess of their own count. [L]
 * @returns True when they make at least half of it. [–]
 */
export function isExplained(excessLitres: number, others: readonly FindingCandidate[]): boolean {
  const explaining = others.filter(
    ({ kind, says }) =>
      kind === 'overwatered' ||
      kind === 'over-programmed' ||
      kind === 'unexplained use' ||
      kind === 'steady flow' ||
      kind === 'off-schedule run' ||
      (kind === 'zone flow changed' && Number(says.details['change']) > 0) ||
      (kind === 'flow to be tested' && Number(says.details['ratio']) > 1),
  );
  return explaining.reduce((sum, { litres }) => sum + (litres ?? 0), 0) >= EXPLAINED_SHARE * excessLitres;
}
