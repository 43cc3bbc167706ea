import { dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import type { Episode } from '../evidence/episode.js';
import type { MeterEvidence } from '../evidence/meter-evidence.js';

/** Settings that put out less than this many steps of the register say nothing of one that stands still: common practice. */
const STEPS = 2;

/**
 * Whether a register that is told of as stuck may rightly have stood still: nothing was programmed between the days of its readings, or nobody
 * knows what was, and a timer may have been shut off by hand.
 *
 * @param episode - What is told of a reading. [code]
 * @param meters - What is known of the property's meters. [L]
 * @returns True where a standing register says nothing; false for all else that is told. [–]
 * @throws {DomainError} `LOCAL_DATE_INVALID` when a date of the episode is none.
 */
export function stoodRightly(episode: Episode, meters: readonly MeterEvidence[]): boolean {
  if (episode.says.code !== 'stuck') return false;
  const evidence = meters.find(({ meterId }) => meterId === episode.meterId);
  if (!evidence) return false;
  const [from, until] = [dayNumberOfDate(episode.fromDate) + 1, dayNumberOfDate(episode.untilDate)].map((day) => day - evidence.firstDay);
  const between = evidence.programmedLitres.subarray(Math.max(0, from ?? 0), Math.max(0, until ?? 0));
  const litres = between.reduce((sum, own) => sum + own, 0);
  return !(litres > STEPS * (evidence.resolutionLitres ?? 0));
}
