import type { MeterEvidence } from '../evidence/meter-evidence.js';
import { type IntervalVolumes, intervalVolumes } from '../monthly/interval-volumes.js';

/** Intervals before by which it is known how metered and programmed go together: the fewest, and the most. Common practice. */
const FEWEST = 4;
const MOST = 12;
/** Intervals scatter by no less than a meter and the flows of its zones do. An assumption. */
const LEAST_SD = 0.02;
/** Beyond so many standard deviations of what is usual something else is in the interval. */
const OTHERWISE = 3;

/** How likely runs are to have passed water, and the local day of the reading that says so. */
export interface RanByReading {
  readonly probability: number;
  readonly localDay: number;
}

/**
 * Whether runs that settings put out did run, by the reading after them: had they been held back, the interval would have passed as much less.
 *
 * The odds are prior / (1 − prior) · φ(z) / φ(z − ln(1 − s) / σ), z = (ln M/P − mean of the intervals before) / σ, s the share of the runs in P.
 *
 * @param evidence - Readings or bills, programmed water by day. [L]
 * @param prior - Probability before the reading. [–]
 * @returns For days (from 0) and the litres of their runs: probability and reading; null where no single interval holds the days, or it says nothing. [–]
 * @source Bayes' rule; JCGM 100:2008 for the standard deviation of a prediction.
 */
export function ranByReadings(evidence: MeterEvidence, prior: number): (days: readonly number[], litres: number) => RanByReading | null {
  const intervals = intervalVolumes(evidence);
  return (days, litres) => {
    const [first, last] = [evidence.firstDay + (days[0] ?? 0), evidence.firstDay + (days.at(-1) ?? 0)];
    const at = intervals.findIndex(({ fromLocalDay, toLocalDay }) => fromLocalDay < first && toLocalDay >= last + 1);
    const own = intervals[at];
    const usual = habitBefore(intervals.slice(0, Math.max(0, at)));
    if (!own || !usual) return null;
    const likelier = timesLikelier(own, usual, litres);
    if (likelier === null) return null;
    const odds = (prior / (1 - prior)) * likelier;
    return { probability: odds / (1 + odds), localDay: own.toLocalDay };
  };
}

interface Usual {
  readonly mean: number;
  readonly sd: number;
}

// How many times likelier the interval is if the runs did run.
function timesLikelier(own: IntervalVolumes, { mean, sd }: Usual, litres: number): number | null {
  const ratio = logRatio(own);
  const share = litres / (own.programmed ?? litres);
  if (ratio === null || !(share > 0 && share < 1)) return null;
  const z = (ratio - mean) / sd;
  if (Math.abs(z) > OTHERWISE) return null;
  const held = z - Math.log(1 - share) / sd;
  return Math.exp((held ** 2 - z ** 2) / 2);
}

const logRatio = ({ metered, programmed }: IntervalVolumes): number | null =>
  programmed !== null && programmed > 0 && metered > 0 ? Math.log(metered / programmed) : null;

function habitBefore(intervals: readonly IntervalVolumes[]): Usual | null {
  const ratios = intervals.slice(-MOST).flatMap((interval) => logRatio(interval) ?? []);
  if (ratios.length < FEWEST) return null;
  const mean = ratios.reduce((sum, ratio) => sum + ratio, 0) / ratios.length;
  const variance = ratios.reduce((sum, ratio) => sum + (ratio - mean) ** 2, 0) / (ratios.length - 1);
  return { mean, sd: Math.max(LEAST_SD, Math.sqrt(variance)) * Math.sqrt(1 + 1 / ratios.length) };
}
