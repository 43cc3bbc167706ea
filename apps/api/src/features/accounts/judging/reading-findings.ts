import { dateOfDayNumber } from '@rillbook/irrigation/calendar/local-date.js';
import { doubtfulReading } from '@rillbook/metering/detection/doubtful-reading.js';
import type { Episode } from '@rillbook/metering/detection/evidence/episode.js';
import { readingEpisodes } from '@rillbook/metering/detection/readings/reading-episodes.js';
import type { ReadMeter } from '../gather/metered-intervals.js';

/** The readings of one meter that are in doubt, through time, each with the reading that it is about. */
export function readingFindings(read: ReadMeter): Episode[] {
  const idOf = new Map(read.judged.map(({ localDay }, at) => [keyOf(read, localDay), read.readingIds[at] ?? null]));
  const withReading = (episode: Episode): Episode => {
    const readingId = idOf.get(episode.causeKey) ?? null;
    return readingId === null ? episode : { ...episode, evidence: { ...episode.evidence, readingId } };
  };
  return [...readingEpisodes(read.series, read.judged).map(withReading), ...impossibleRegisters(read)];
}

const keyOf = ({ series }: ReadMeter, localDay: number): string => `doubtful reading meter:${series.meterId} ${dateOfDayNumber(localDay)}`;

const BEYOND_ITS_DIGITS = { judgement: 'implausibly high', litres: null, likelyRegister: null, factor: null } as const;

function impossibleRegisters({ series, judged, impossible }: ReadMeter): Episode[] {
  return impossible.flatMap(({ readingId, localDay, register }) => {
    const previous = judged.findLast((one) => one.localDay < localDay) ?? null;
    const date = dateOfDayNumber(localDay);
    const candidate = doubtfulReading({
      meterId: series.meterId,
      date,
      previousDate: previous ? dateOfDayNumber(previous.localDay) : date,
      previousRegister: previous?.register ?? 0,
      nextRegister: register,
      judged: BEYOND_ITS_DIGITS,
    });
    if (!candidate || readingId === null) return [];
    return [{ ...candidate, evidence: { ...candidate.evidence, readingId }, openedLocalDay: localDay, clearedLocalDay: null }];
  });
}
