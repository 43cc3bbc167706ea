import type { FindingKind } from '../finding-candidate.js';
import type { KeptFinding, TimedEpisode } from './kept-finding.js';

/** Episodes that records move by less are the same. Common practice: a reading's distance. [ms] */
const MOVED_MS = 35 * 86_400_000;

/** Kinds by which one cause may be told with other records. */
const SAME_CAUSE: readonly (readonly FindingKind[])[] = [
  ['overwatered', 'unexplained use', 'over-programmed', 'steady flow', 'off-schedule run', 'zone flow changed'],
  ['not delivering', 'doubtful reading'],
];

/**
 * Which kept finding each episode is: the same cause key, else the same family or place, kind and time, as changed records tell it.
 *
 * @param kept - The property's findings. [code]
 * @param episodes - Its episodes as the records tell them now. [code]
 * @returns The kept finding of each episode, or null where it is a new one; no finding twice. [code]
 */
export function matchFindings(kept: readonly KeptFinding[], episodes: readonly TimedEpisode[]): readonly (KeptFinding | null)[] {
  const found = new Map<TimedEpisode, KeptFinding>();
  const taken = new Set<KeptFinding>();
  const take = (isMatch: (finding: KeptFinding, episode: TimedEpisode) => boolean) => {
    for (const episode of episodes) {
      if (found.has(episode)) continue;
      const finding = newestFirst(kept).find((one) => !taken.has(one) && isMatch(one, episode));
      if (!finding) continue;
      found.set(episode, finding);
      taken.add(finding);
    }
  };
  take((finding, episode) => finding.causeKey === episode.causeKey);
  take((finding, episode) => finding.kind === episode.kind && isSamePlace(finding, episode) && overlaps(finding, episode));
  take((finding, episode) => isSameFamily(finding, episode) && overlaps(finding, episode));
  return episodes.map((episode) => found.get(episode) ?? null);
}

function newestFirst(kept: readonly KeptFinding[]): readonly KeptFinding[] {
  const isOpen = ({ state }: KeptFinding) => Number(state === 'open' || state === 'in work');
  return [...kept].sort((a, b) => isOpen(b) - isOpen(a) || b.openedAt - a.openedAt || (a.id < b.id ? -1 : 1));
}

/** Of a zone, or of several that usage does not tell apart: the family names the likeliest. */
const OF_ZONE = 'zone flow zone:';

/**
 * Whether a finding and an episode are about the same meter, controller and zone; of zones that are named together, about the same likeliest zone.
 *
 * @param finding - The finding. [code]
 * @param episode - The episode. [code]
 * @returns True where all three are the same. [–]
 */
export function isSamePlace(finding: KeptFinding, episode: TimedEpisode): boolean {
  const { meterId, controllerId, causeFamily } = episode;
  if (finding.meterId !== meterId || finding.controllerId !== controllerId) return false;
  if ([finding.causeFamily, causeFamily].some((family) => family.startsWith(OF_ZONE))) return finding.causeFamily === causeFamily;
  const zoneId = episode.zoneIds.length === 1 ? (episode.zoneIds[0] ?? null) : null;
  return finding.zoneId === zoneId;
}

function isSameFamily(finding: KeptFinding, episode: TimedEpisode): boolean {
  const same = SAME_CAUSE.some((kinds) => kinds.includes(finding.kind) && kinds.includes(episode.kind));
  return (
    same && finding.kind !== episode.kind && finding.meterId !== null && finding.meterId === episode.meterId && isTelling(finding, episode)
  );
}

// Only a cause that is still told may take another kind: what has ended was what it was.
function isTelling(finding: KeptFinding, episode: TimedEpisode): boolean {
  return finding.clearedAt === null && episode.clearedAt === null && (finding.state === 'open' || finding.state === 'in work');
}

function overlaps(finding: KeptFinding, episode: TimedEpisode): boolean {
  const end = (clearedAt: number | null) => (clearedAt ?? Number.POSITIVE_INFINITY) + MOVED_MS;
  return finding.openedAt <= end(episode.clearedAt) && episode.openedAt <= end(finding.clearedAt);
}
