import { dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import type { Episode } from '@rillbook/metering/detection/evidence/episode.js';
import { seasonNotFollowed, withSeason } from '@rillbook/metering/detection/settings/season-not-followed.js';
import type { PropertyEvidence } from '../evidence/property-evidence.js';
import type { PropertyFacts } from '../gather/property-facts.js';

/** Findings about settings, with the season as their cause where settings were left as they were while the need changed. */
export function withSeasons(episodes: readonly Episode[], facts: PropertyFacts, evidence: PropertyEvidence, today: number): Episode[] {
  return episodes.map((episode) => {
    if (episode.controllerId === null || !['over-programmed', 'under-programmed'].includes(episode.kind)) return episode;
    const changedDay = lastChange(facts, episode.controllerId, episode.untilDate);
    if (changedDay === null) return episode;
    const { firstDay, days } = evidence.calendar;
    const zones = evidence.zones.filter(({ controllerId, id }) => controllerId === episode.controllerId && episode.zoneIds.includes(id));
    const neededLitres = new Float64Array(days);
    for (const zone of zones) {
      const own = evidence.neededOf(zone);
      for (let day = 0; day < days; day++) neededLitres[day]! += own[day]!;
    }
    const lastDay = Math.min(dayNumberOfDate(episode.untilDate), today - 1);
    return withSeason(episode, seasonNotFollowed({ firstDay, neededLitres, changedDay, lastDay }));
  });
}

function lastChange({ settings }: PropertyFacts, controllerId: string, until: string): number | null {
  const dates = settings
    .filter((fact) => fact.controllerId === controllerId && fact.record !== 'planned')
    .map(({ localTime }) => localTime.slice(0, 'YYYY-MM-DD'.length))
    .filter((date) => date <= until)
    .sort();
  const last = dates.at(-1);
  return last === undefined ? null : dayNumberOfDate(last);
}
