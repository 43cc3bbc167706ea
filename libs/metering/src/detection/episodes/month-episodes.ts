import { dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import { isExplained } from '../cause.js';
import type { FindingCandidate, FindingKind } from '../finding-candidate.js';
import { daysPerMonth } from '../hourly/episode-of-sighting.js';
import type { Thresholds } from '../thresholds.js';
import type { Episode } from '../evidence/episode.js';
import type { JudgedMonth } from './judged-month.js';

/** A month under way says something after a week: common practice. [d] */
const FEWEST_DAYS = 7;

/** A month under way ends what is open when it has said otherwise for half of its days. Common practice. [d] */
const DAYS_THAT_END = 15;

/** What is open stays open down to this share of what opens it, so that it does not open and close from month to month. An assumption. */
const STAYS_SHARE = 0.5;

/**
 * What month accounts say of settings, allowance and sources, through time: a cause that is seen in months one after the other is one episode.
 *
 * It is opened by the first month that is worth a look, when its last day is over, and ends with the first whole month that is not. Over
 * allowance opens only where no other episode explains the excess of that month.
 *
 * @param months - Months, oldest first. [L]
 * @param others - What else was found of the property's meters. [code]
 * @param thresholds - What the organization wants to be told. [any]
 * @returns The episodes, in no order. [code]
 */
export function monthEpisodes(months: readonly JudgedMonth[], others: readonly Episode[], thresholds: Thresholds): readonly Episode[] {
  const told = months.filter(({ throughDate, daysCovered }) => throughDate !== null && daysCovered >= FEWEST_DAYS);
  const settings = throughMonths(told, ({ candidates }) => candidates, { opens: thresholds, stays: lessened(thresholds) });
  const all = [...others, ...settings];
  const allowance = throughMonths(told, (month) => (isOverAlone(month, all) && month.allowance ? [month.allowance] : []), {
    opens: thresholds,
    // A month's allowance is a month's: the next one is a judgement of its own.
    stays: thresholds,
  });
  return [...settings, ...allowance];
}

function isOverAlone(month: JudgedMonth, others: readonly Episode[]): boolean {
  const [from, until] = [dayNumberOfDate(`${month.month}-01`), endOf(month)];
  const open = others.filter(
    ({ openedLocalDay, clearedLocalDay, fromDate }) =>
      // What is found of this month may be told some days after it.
      dayNumberOfDate(fromDate) < until && openedLocalDay < until + NEXT_READING_DAYS && (clearedLocalDay ?? until) > from,
  );
  const explaining = open.map((one) => (SEEN_BY_THE_HOUR.has(one.kind) ? within(one, from, until) : one));
  return month.allowance !== null && !isExplained(month.allowance.litres ?? 0, explaining);
}

/** Kinds whose first and last day are known: of a month they explain their own days. */
const SEEN_BY_THE_HOUR: ReadonlySet<FindingKind> = new Set(['steady flow', 'off-schedule run', 'zone flow changed']);

function within(episode: Episode, from: number, until: number): Episode {
  const { litres, fromDate, clearedLocalDay } = episode;
  const days = Math.min(until, clearedLocalDay ?? until) - Math.max(from, dayNumberOfDate(fromDate));
  return { ...episode, litres: litres === null ? null : (litres * Math.max(0, days)) / daysPerMonth };
}

/** Readings are about so far apart: what a month's end cannot explain yet the next reading may. Common practice. [d] */
const NEXT_READING_DAYS = 35;

// The instant at which the last day that a month covers is over.
function endOf({ throughDate }: JudgedMonth): number {
  return dayNumberOfDate(throughDate ?? '') + 1;
}

function throughMonths(
  months: readonly JudgedMonth[],
  candidatesOf: (month: JudgedMonth) => readonly FindingCandidate[],
  { opens, stays }: { readonly opens: Thresholds; readonly stays: Thresholds },
): readonly Episode[] {
  const ended: Episode[] = [];
  const open = new Map<string, Episode>();
  for (const month of months) {
    const candidates = new Map(candidatesOf(month).map((candidate) => [candidate.causeKey, candidate]));
    for (const [key, episode] of open) {
      const candidate = candidates.get(key);
      if (candidate && isWorth(candidate, stays)) open.set(key, goneOn(episode, candidate));
      else if (month.daysCovered === month.daysInMonth || month.daysCovered >= DAYS_THAT_END) {
        ended.push({ ...episode, clearedLocalDay: endOf(month) });
        open.delete(key);
      }
    }
    for (const [key, candidate] of candidates)
      if (!open.has(key) && isWorth(candidate, opens)) open.set(key, begun(candidate, endOf(month)));
  }
  return [...ended, ...open.values()];
}

function begun(candidate: FindingCandidate, openedLocalDay: number): Episode {
  return { ...candidate, causeKey: `${candidate.causeKey} ${candidate.fromDate}`, openedLocalDay, clearedLocalDay: null };
}

function goneOn(episode: Episode, candidate: FindingCandidate): Episode {
  const { causeKey, fromDate, openedLocalDay, clearedLocalDay } = episode;
  return { ...candidate, causeKey, fromDate, openedLocalDay, clearedLocalDay };
}

function lessened({ minConfidence, minLitres, minMoney }: Thresholds): Thresholds {
  return {
    minConfidence: STAYS_SHARE + (minConfidence - STAYS_SHARE) / 2,
    minLitres: STAYS_SHARE * minLitres,
    minMoney: STAYS_SHARE * minMoney,
  };
}

function isWorth({ litres, money, confidence }: FindingCandidate, { minConfidence, minLitres, minMoney }: Thresholds): boolean {
  return (litres === null || litres >= minLitres) && (money === null || money >= minMoney) && confidence >= minConfidence;
}
