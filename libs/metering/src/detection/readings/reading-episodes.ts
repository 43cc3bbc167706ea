import { dateOfDayNumber } from '@rillbook/irrigation/calendar/local-date.js';
import { doubtfulReading } from '../doubtful-reading.js';
import type { Episode } from '../evidence/episode.js';
import type { JudgedInSeries, ReadingSeries } from './reading-series.js';

/**
 * Doubtful readings of a meter as episodes: opened by the newest reading that was needed to doubt them, ended where the next shows that they
 * were right, or that a register which stood still moves.
 *
 * @param series - The meter. [any]
 * @param judged - Its readings with their judgements, in order of time. [code]
 * @returns One episode for each reading in doubt. [code]
 */
export function readingEpisodes(series: ReadingSeries, judged: readonly JudgedInSeries[]): readonly Episode[] {
  return judged.flatMap((reading, at) => {
    const { judgement, previous, seenLocalDay, otherMeterId } = reading;
    if (previous === null || judgement === 'first') return [];
    const candidate = doubtfulReading({
      meterId: series.meterId,
      date: dateOfDayNumber(reading.localDay),
      previousDate: dateOfDayNumber(previous.localDay),
      previousRegister: previous.register,
      nextRegister: reading.register,
      judged: { ...reading, judgement: judgement === 'another meter' ? otherJudgement(reading) : judgement },
    });
    if (!candidate) return [];
    const details = { ...candidate.says.details, otherMeterId };
    return [
      {
        ...candidate,
        says: { ...candidate.says, details },
        openedLocalDay: seenLocalDay,
        clearedLocalDay: clearedOn(reading, judged.slice(at + 1)),
      },
    ];
  });
}

// What it looks like beside the meter's own last register; whose it is stands beside it.
function otherJudgement({ litres }: JudgedInSeries) {
  return litres === null ? 'lower than last' : 'implausibly high';
}

function clearedOn(reading: JudgedInSeries, later: readonly JudgedInSeries[]): number | null {
  if (reading.judgement === 'stuck')
    return later.find(({ litres, judgement }) => judgement === 'ok' && (litres ?? 0) > 0)?.localDay ?? null;
  return reading.isRight ? reading.settledLocalDay : null;
}
