import type { Episode } from '../evidence/episode.js';
import type { MeterEvidence } from '../evidence/meter-evidence.js';

/** What readings showed must show by the hour within this, or it has ended: two weeks of nights and of every program. Common practice. [d] */
const SEEN_WITHIN_DAYS = 14;

/** What the hours showed must show in one of so many readings after them, or it has ended: one is cut by the change. Common practice. */
const SEEN_WITHIN_READINGS = 2;

/** What readings say and what hourly usage says of one meter. */
export interface SaidOfMeter {
  readonly monthly: readonly Episode[];
  readonly hourly: readonly Episode[];
}

/**
 * Ends what one kind of evidence left open when the other took over and has not seen it again.
 *
 * Readings stop being judged where hourly usage begins, and the other way round: an open episode of either would otherwise never end.
 *
 * @param evidence - All that is known of the meter. [code]
 * @param said - Episodes by readings and by hourly usage. [code]
 * @returns The same, with their ends. [code]
 */
export function handedOver(evidence: MeterEvidence, said: SaidOfMeter): SaidOfMeter {
  const { monthly, hourly } = said;
  const hours = knownHours(evidence);
  if (!hours) return said;
  const read = evidence.intervals.filter(({ source }) => source !== 'usage');
  const after = read.filter(({ fromLocalDay }) => fromLocalDay >= hours.until - 1)[SEEN_WITHIN_READINGS - 1]?.toLocalDay;
  const ends = hours.from + SEEN_WITHIN_DAYS;
  // Where settings are not known readings are judged on beside the hours.
  const goesOn = read.some(({ toLocalDay }) => toLocalDay > ends);
  return {
    monthly: goesOn ? monthly : monthly.map((one) => (one.openedLocalDay <= hours.from ? endedAt(one, ends, hours.until) : one)),
    hourly: after === undefined ? hourly : hourly.map((one) => endedAt(one, after, after)),
  };
}

function endedAt(episode: Episode, localDay: number, latest: number): Episode {
  return episode.clearedLocalDay === null && localDay <= latest ? { ...episode, clearedLocalDay: localDay } : episode;
}

// First and last local day of which the hours are known.
function knownHours({ usage, midnights, firstDay }: MeterEvidence): { readonly from: number; readonly until: number } | null {
  if (!usage) return null;
  const first = usage.litres.findIndex((litres) => !Number.isNaN(litres));
  if (first < 0) return null;
  const last = usage.litres.findLastIndex((litres) => !Number.isNaN(litres));
  const dayOf = (step: number) =>
    firstDay + midnights.findLastIndex((midnight) => midnight <= usage.firstMinute + step * usage.stepMinutes);
  return { from: dayOf(first), until: dayOf(last) + 1 };
}
