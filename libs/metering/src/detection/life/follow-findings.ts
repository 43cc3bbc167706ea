import { dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import type { FindingKind } from '../finding-candidate.js';
import type { KeptFinding, TimedEpisode } from './kept-finding.js';
import { isSamePlace, matchFindings } from './match-findings.js';
import { outgrew, silencedBy } from './silenced-by.js';

const MS_PER_DAY = 86_400_000;

/** What is still told so long after somebody resolved it has come back: a monthly round, or three nights by the hour. Common practice. [d] */
const BACK_AFTER_DAYS = 35;
const BACK_AFTER_HOURLY_DAYS = 3;
const HOURLY: readonly FindingKind[] = ['steady flow', 'off-schedule run', 'zone flow changed', 'watered in rain'];

/** What is to be done with a finding, or for an episode that is none yet. */
export type FindingStep =
  | { readonly deed: 'open'; readonly episode: TimedEpisode; readonly cameBack: number; readonly silencedBy: KeptFinding | null }
  | { readonly deed: 'follow' | 'come back'; readonly finding: KeptFinding; readonly episode: TimedEpisode }
  | { readonly deed: 'clear'; readonly finding: KeptFinding; readonly episode: TimedEpisode | null }
  | { readonly deed: 'let go'; readonly finding: KeptFinding };

/**
 * What becomes of a property's findings, as its records tell their causes now.
 *
 * Who is open or in work follows the numbers, and ends when they do; what a person opened again after that stays open. A dismissed one is silent until it has cleared, or comes
 * back when it has grown beyond what its reason covers; the next time it is a finding of its own that says that it came back, unless the reason of
 * the dismissal covers it. A resolved one comes back when records after
 * the decision still show it. What is past and was never told follows the records.
 *
 * @param kept - The property's findings. [code]
 * @param episodes - Its episodes, one for each cause. [code]
 * @returns The steps; none where nothing changes but numbers that a finding follows. [code]
 */
export function followFindings(kept: readonly KeptFinding[], episodes: readonly TimedEpisode[]): readonly FindingStep[] {
  const matches = matchFindings(kept, episodes);
  const steps: FindingStep[] = episodes.flatMap((episode, at) => {
    const finding = matches[at] ?? null;
    return finding ? stepOf(finding, episode) : [opened(episode, kept)];
  });
  const seen = new Set(matches);
  return [...steps, ...kept.filter((finding) => !seen.has(finding)).flatMap(unseen)];
}

function opened(episode: TimedEpisode, kept: readonly KeptFinding[]): FindingStep {
  const before = kept
    .filter((one) => one.kind === episode.kind && isSamePlace(one, episode) && one.openedAt < episode.openedAt)
    .sort((a, b) => b.openedAt - a.openedAt)[0];
  return { deed: 'open', episode, cameBack: before ? before.cameBack + times(before, episode) : 0, silencedBy: silencedBy(episode, kept) };
}

// What opens anew because it grew was not away meanwhile, unless somebody had taken it for done.
function times({ state }: KeptFinding, { says }: TimedEpisode): number {
  const isGrown = says.details['outgrownLitresPerMonth'] !== undefined;
  return isGrown && (state === 'open' || state === 'in work') ? 0 : 1;
}

function stepOf(finding: KeptFinding, episode: TimedEpisode): readonly FindingStep[] {
  if (finding.state === 'open' || finding.state === 'in work')
    return [{ deed: episode.clearedAt === null || isOpenedAgain(finding, episode) ? 'follow' : 'clear', finding, episode }];
  if (finding.isPast) return [{ deed: episode.clearedAt === null ? 'come back' : 'follow', finding, episode }];
  if (episode.clearedAt !== null) return finding.clearedAt === null ? [{ deed: 'clear', finding, episode }] : [];
  return isBack(finding, episode) ? [{ deed: 'come back', finding, episode }] : [];
}

// What a person opened again after the records had ended it stays until a person decides, or until it is seen and ends anew.
function isOpenedAgain({ state, decidedAt, clearedAt }: KeptFinding, episode: TimedEpisode): boolean {
  return state === 'open' && decidedAt !== null && clearedAt !== null && (episode.clearedAt ?? 0) <= decidedAt;
}

function isBack(finding: KeptFinding, episode: TimedEpisode): boolean {
  const { state, decidedAt, clearedAt } = finding;
  if (state === 'dismissed') return clearedAt !== null || outgrew(finding, episode);
  if (decidedAt === null) return true;
  const after = HOURLY.includes(episode.kind) ? BACK_AFTER_HOURLY_DAYS : BACK_AFTER_DAYS;
  return dayNumberOfDate(episode.untilDate) * MS_PER_DAY >= decidedAt + after * MS_PER_DAY;
}

function unseen(finding: KeptFinding): readonly FindingStep[] {
  if (finding.isPast) return [{ deed: 'let go', finding }];
  return finding.clearedAt === null ? [{ deed: 'clear', finding, episode: null }] : [];
}
