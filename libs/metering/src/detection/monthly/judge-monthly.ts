import { defaultRelativeSd } from '../../uncertainty/default-relative-sd.js';
import type { Episode } from '../evidence/episode.js';
import type { MeterEvidence } from '../evidence/meter-evidence.js';
import type { Thresholds } from '../thresholds.js';
import { withBills } from './beside/bills-between.js';
import { type IntervalVolumes, intervalVolumes, monthOfReadings } from './interval-volumes.js';
import { atLevel, habitOnRecord, type MeterHabit } from './habit/meter-habit.js';
import { NeedWatch } from './beside/need-watch.js';
import { RatioWatch } from './ratio-watch.js';

/** An assumption on the safe side. */
const OF_FIRST = 0.5;

/** Nobody wrote down whether a hose is fed by the meter: half of its water, and as much in doubt. */
const BY_HAND = 0.5;

/**
 * What readings and bills say of a meter through time: unexplained use, not delivering, flow to be tested, and overwatered where programmed
 * is not known. Each interval is judged by those before it alone.
 *
 * The meter's own ratio of metered to programmed is learnt from reading to reading. One reading, two, three or six together
 * (`windowScore`), or a cumulative sum of all show a change of it (`windowLimits`). A change that lasts stays one episode: while it is open
 * the habit learns nothing, and a further cause, half as large at least, ends it and opens the next (`grownAnew`).
 *
 * False alarms by property and year, and the share of lasting leaks found within two readings by their size, as a share of the months' own
 * water (300 properties, 24 months of habit; `npm run prove -- monthly-detection` counts more):
 *
 * | months scatter by | false alarms | 0.05 | 0.10 | 0.15 | 0.20 |
 * |---|---|---|---|---|---|
 * | 2 % | 0.056 | 0.73 | 1.00 | 1.00 | 1.00 |
 * | 3 % | 0.086 | 0.34 | 0.90 | 1.00 | 1.00 |
 * | 4 % | 0.103 | 0.16 | 0.55 | 0.90 | 0.99 |
 *
 * @param evidence - All that is known of the meter. [L]
 * @param thresholds - What the organization wants to be told. [any]
 * @returns Episodes in the order in which they were opened. [code]
 */
export function judgeMonthly(evidence: MeterEvidence, thresholds: Thresholds): readonly Episode[] {
  const read = judgedBy(evidence, thresholds);
  const readings = evidence.intervals.filter(({ source }) => source === 'readings');
  if (!evidence.billed?.length || !readings.length) return read;
  const billed = judgedBy({ ...evidence, intervals: evidence.billed }, thresholds);
  return [...withBills(read, billed, readings)].sort((a, b) => a.openedLocalDay - b.openedLocalDay);
}

function judgedBy(evidence: MeterEvidence, thresholds: Thresholds): readonly Episode[] {
  const { meterId, zones, pricePerLitre, kind, indoorLitresPerDay, indexLitres } = evidence;
  const isLearnt = kind === 'mixed' && indoorLitresPerDay === null;
  const isIndexed = Boolean(indexLitres) && !isLearnt;
  const judged = { meterId, zones, price: pricePerLitre, thresholds, isIndexed };
  const intervals = intervalVolumes(isIndexed && indexLitres ? { ...evidence, programmedLitres: indexLitres } : evidence);
  const ratio = new RatioWatch(judged, habitAtFirst(evidence, intervals, isLearnt));
  const need = new NeedWatch(judged);
  let at = 0;
  const seeUntil = (localDay: number): void => {
    for (let next = intervals[at]; next && next.toLocalDay <= localDay; next = intervals[++at])
      if (next.programmed !== null) ratio.see(next);
  };
  for (const volumes of intervalVolumes(evidence, monthOfReadings)) {
    seeUntil(volumes.toLocalDay);
    // What people use is in what passed, and nobody knows how much: it cannot be set against the need.
    if (!isLearnt) need.see(volumes, ratio.isOpen);
  }
  seeUntil(Number.POSITIVE_INFINITY);
  return [...ratio.episodes(), ...need.episodes()].sort((a, b) => a.openedLocalDay - b.openedLocalDay);
}

// The flows on record, what people are said to use, and half of what is said to be watered by hand: it may all come from this meter, or none.
function habitAtFirst(evidence: MeterEvidence, intervals: readonly IntervalVolumes[], isLearnt: boolean): MeterHabit {
  const { kind, indoorLitresPerDay, programmedRelativeSd, handLitresPerDay = 0 } = evidence;
  const indoor = isLearnt ? indoorAtFirst(intervals) : 0;
  const indoorSd = isLearnt ? indoor : kind === 'mixed' ? defaultRelativeSd.indoor.stated * (indoorLitresPerDay ?? 0) : 0;
  const offset = { litresPerDay: indoor + BY_HAND * handLitresPerDay, sd: Math.hypot(indoorSd, BY_HAND * handLitresPerDay) };
  const isIndexed = !isLearnt && Boolean(evidence.indexLitres);
  return atLevel(habitOnRecord(evidence.zones, isIndexed ? 0 : programmedRelativeSd, offset), isIndexed ? levelOfIndex(intervals) : 1);
}

// Nobody stated what people use: until readings tell it, half of the first one's water, and as much in doubt.
function indoorAtFirst([first]: readonly IntervalVolumes[]): number {
  return first ? OF_FIRST * Math.max(0, first.metered / first.days) : 0;
}

// Flows that are not on record make programmed water an index: the first interval that watered gives its level, within what flows may be off by.
function levelOfIndex(intervals: readonly IntervalVolumes[]): number {
  const first = intervals.find(({ programmed, metered }) => (programmed ?? 0) > 0 && metered > 0);
  return first ? first.metered / (first.programmed ?? 1) : 1;
}
