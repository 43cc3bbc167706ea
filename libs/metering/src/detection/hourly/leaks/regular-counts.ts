/** Counts of a flow that never stops differ by one at most between equal spans: their variance is at most this. */
const STEADY_VARIANCE = 0.25;

/** Allowance for a flow that is not quite steady: pressure by day and night. Common practice, no source. [–] */
const FLOW_RELATIVE_SD = 0.2;

/**
 * Whether the steps of a coarse register come as regularly as those of a steady flow: waiting times alike, so that counts in equal spans
 * hardly vary. Uses of people come by chance, and their counts vary at least as those of Poisson, by their mean.
 *
 * variance ≤ midway between 1/4 + (0.2 · mean)² of a steady flow and the mean of Poisson
 *
 * @param counts - Steps of the register in equal spans, such as hours of the night. [–]
 * @returns True when they are nearer to a steady flow than to chance. [–]
 * @source Index of dispersion: Fisher (1925), Statistical Methods for Research Workers, for counts of Poisson.
 */
export function comeRegularly(counts: readonly number[]): boolean {
  if (counts.length < 2) return false;
  const mean = counts.reduce((sum, count) => sum + count, 0) / counts.length;
  const variance = counts.reduce((sum, count) => sum + (count - mean) ** 2, 0) / (counts.length - 1);
  const steady = STEADY_VARIANCE + (FLOW_RELATIVE_SD * mean) ** 2;
  return mean > 0 && variance <= Math.max(steady, (steady + mean) / 2);
}
