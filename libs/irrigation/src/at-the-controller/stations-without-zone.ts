import type { ZoneToPlan } from '../planning/plan-input.js';
import type { Program } from '../settings/settings-fact.js';

/**
 * Stations that programs run though no zone is known there: what they water, nobody can say, so nothing can be planned around them.
 *
 * @param zones - The zones of the controller. [–]
 * @param programs - What is set on it. [–]
 * @returns Their numbers, each once, the lowest first. [–]
 */
export function stationsWithoutZone(zones: readonly Pick<ZoneToPlan, 'station'>[], programs: readonly Program[]): readonly number[] {
  const known = new Set(zones.map(({ station }) => station));
  const run = programs.flatMap(({ stations }) => stations.filter(({ minutes }) => minutes > 0).map(({ station }) => station));
  return [...new Set(run)].filter((station) => !known.has(station)).sort((a, b) => a - b);
}
