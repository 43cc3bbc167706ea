import { dateOfDayNumber } from '@rillbook/irrigation/calendar/local-date.js';
import type { EarlierKind, Episode } from '@rillbook/metering/detection/evidence/episode.js';
import type { TimedEpisode } from '@rillbook/metering/detection/life/kept-finding.js';
import { Temporal } from 'temporal-polyfill';

const MS_PER_SECOND = 1000;

/** What a finding was before, with the instant since when. */
export interface EarlierKindAt {
  readonly kind: EarlierKind['kind'];
  readonly at: string;
}

/** An episode whose local days are instants. */
export interface EpisodeInTime extends TimedEpisode {
  readonly history: readonly EarlierKindAt[];
}

const known = new Map<string, Map<number, number>>();

/** The instants at which local days begin: those of a time zone are looked up once, as many properties share it. */
function midnightsOf(timeZone: string): (day: number) => number {
  const midnights = known.get(timeZone) ?? new Map<number, number>();
  known.set(timeZone, midnights);
  return (day) => {
    const present = midnights.get(day);
    if (present !== undefined) return present;
    const at = Temporal.PlainDate.from(dateOfDayNumber(day)).toZonedDateTime(timeZone).epochMilliseconds;
    midnights.set(day, at);
    return at;
  };
}

/** Episodes of a place with the instants of their local days; of a day of 23 or 25 hours the elapsed share counts. */
export function episodesInTime(episodes: readonly Episode[], timeZone: string): EpisodeInTime[] {
  const midnight = midnightsOf(timeZone);
  // Readings are written to the second; a share of a day is not exact.
  const instant = (localDay: number): number => {
    const day = Math.floor(localDay);
    const begin = midnight(day);
    const at = begin + (localDay - day) * (midnight(day + 1) - begin);
    return Math.round(at / MS_PER_SECOND) * MS_PER_SECOND;
  };
  return episodes.map(({ openedLocalDay, clearedLocalDay, earlier, ...candidate }) => ({
    ...candidate,
    openedAt: instant(openedLocalDay),
    clearedAt: clearedLocalDay === null ? null : instant(clearedLocalDay),
    history: (earlier ?? []).map((before) => ({ kind: before.kind, at: new Date(instant(before.openedLocalDay)).toISOString() })),
  }));
}
