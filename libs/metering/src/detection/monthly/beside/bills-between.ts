import type { UsageInterval } from '../../../intervals/usage-interval.js';
import type { Episode } from '../../evidence/episode.js';

/** A reading that shows what a bill showed comes within this; it may miss one visit. Common practice. [d] */
const SHOWN_WITHIN_DAYS = 75;
/** Litres are alike when the one is at least this share of the other. Common practice, no source. */
const ALIKE = 0.4;
/** Readings after a bill by which what it showed must be seen again, or it has ended: one is cut by its begin. Common practice. */
const SEEN_WITHIN_READINGS = 2;

/**
 * What bills showed of a meter that is read too: use that a bill tells before the next reading is told with the bill.
 *
 * @param read - Episodes by readings. [code]
 * @param billed - Episodes by bills. [code]
 * @param readings - Intervals of the readings, in order of time. [L]
 * @returns Episodes of both, one for each cause. [code]
 */
export function withBills(read: readonly Episode[], billed: readonly Episode[], readings: readonly UsageInterval[]): readonly Episode[] {
  let all = read;
  for (const bill of billed.filter(isOfHabit)) {
    const partner = all.find((one) => shows(one, bill));
    if (partner) all = all.map((one) => (one === partner ? toldBy(bill, one) : one));
    else if (!all.some((one) => isOpen(one, bill))) all = [...all, endedBy(readings, bill)];
  }
  return all;
}

// Before there is a habit the flows on record are likelier to be wrong: that is for the readings to say.
function isOfHabit({ kind, says }: Episode): boolean {
  return kind === 'unexplained use' && typeof says.details['usualRatio'] === 'number';
}

function shows(one: Episode, bill: Episode): boolean {
  const later = one.openedLocalDay - bill.openedLocalDay;
  const [a, b] = [one.litres ?? 0, bill.litres ?? 0];
  return one.kind === bill.kind && later >= 0 && later <= SHOWN_WITHIN_DAYS && Math.min(a, b) >= ALIKE * Math.max(a, b);
}

function toldBy(bill: Episode, one: Episode): Episode {
  return { ...one, openedLocalDay: bill.openedLocalDay, fromDate: bill.fromDate < one.fromDate ? bill.fromDate : one.fromDate };
}

const isOpen = ({ openedLocalDay, clearedLocalDay }: Episode, bill: Episode): boolean =>
  openedLocalDay <= bill.openedLocalDay && (clearedLocalDay ?? Number.POSITIVE_INFINITY) > bill.openedLocalDay;

function endedBy(readings: readonly UsageInterval[], bill: Episode): Episode {
  const seen = readings.filter(({ toLocalDay }) => toLocalDay > bill.openedLocalDay)[SEEN_WITHIN_READINGS - 1];
  const cleared = Math.min(seen?.toLocalDay ?? Number.POSITIVE_INFINITY, bill.clearedLocalDay ?? Number.POSITIVE_INFINITY);
  return { ...bill, clearedLocalDay: Number.isFinite(cleared) ? cleared : null };
}
