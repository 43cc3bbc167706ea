import type { Episode } from '../evidence/episode.js';
import type { MeterEvidence } from '../evidence/meter-evidence.js';
import { episodeOfSighting } from './episode-of-sighting.js';
import { followedBy, observe } from './observe.js';
import { settleHourly } from './settle-hourly.js';

/**
 * Findings of a meter through time, by its usage of 15 minutes or an hour and the runs that the settings held: steady flow, off-schedule
 * run, watered in rain, zone flow changed, not delivering, unexplained use, flow to be tested. Each opens by what was known then.
 *
 * @param evidence - All that is known of the meter. [code]
 * @returns Episodes in order of opening, one for each cause; none where there is no usage by steps. [code]
 * @throws {DomainError} `USAGE_STEPS_OUT_OF_DOMAIN` when a step is longer than an hour.
 */
export function judgeHourly(evidence: MeterEvidence): readonly Episode[] {
  if (!evidence.usage) return [];
  const seen = observe(evidence, evidence.usage);
  const sightings = followedBy(seen).flatMap(({ told }) => told);
  const episodes = sightings.map((sighting) => episodeOfSighting(seen.meter, sighting));
  return settleHourly(episodes.sort((a, b) => a.openedLocalDay - b.openedLocalDay));
}
