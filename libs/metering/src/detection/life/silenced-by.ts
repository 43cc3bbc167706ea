import type { FindingKind } from '../finding-candidate.js';
import type { DismissReason, KeptFinding, TimedEpisode } from './kept-finding.js';
import { isSamePlace } from './match-findings.js';

/** More of the same by this is something else than what was dismissed. An assumption. */
const MORE_OF_THE_SAME = 1.5;

/** What was not useful must be so many times larger before it is told again: each such dismissal raises the threshold. An assumption. */
const NOT_USEFUL_FACTOR = 2;

/** A dismissal is believed so long: a season goes round. [ms] */
const BELIEVED_MS = 400 * 86_400_000;

/** How much water of the same kind at the same place a reason silences, in shares of what was dismissed; 0: only what it was said of. */
const SILENCES: Readonly<Record<DismissReason, number>> = {
  'hand watering known': MORE_OF_THE_SAME,
  'meter known to be off': MORE_OF_THE_SAME,
  'client wants it': MORE_OF_THE_SAME,
  'not worth the trip': MORE_OF_THE_SAME,
  'not useful': NOT_USEFUL_FACTOR,
  'looked after': 0,
  'numbers are wrong': 0,
  other: 0,
};

/**
 * The dismissed finding that silences an episode: what was learnt from the reason why it was dismissed.
 *
 * @param episode - The episode, which no kept finding is. [code]
 * @param kept - The property's findings. [code]
 * @returns The newest dismissed finding that covers it, or null where somebody should be told. [code]
 */
export function silencedBy(episode: TimedEpisode, kept: readonly KeptFinding[]): KeptFinding | null {
  const covering = kept.filter(
    (one) => isDismissedBefore(one, episode) && one.kind === episode.kind && isSamePlace(one, episode) && covers(one, episode),
  );
  return covering.sort((a, b) => (b.decidedAt ?? 0) - (a.decidedAt ?? 0))[0] ?? null;
}

/** Kinds whose water is a rate a month: of the others it is of the days so far, and grows with them alone. */
const AT_A_RATE: readonly FindingKind[] = [
  'overwatered',
  'unexplained use',
  'not delivering',
  'steady flow',
  'off-schedule run',
  'zone flow changed',
];

/**
 * Whether a dismissed finding that is still told has grown beyond what its reason covers: a further cause may have begun, and somebody should be told.
 *
 * @param finding - The dismissed finding, with the water at which it was dismissed. [L]
 * @param episode - What the records tell of it now. [L]
 * @returns False where the reason is about this one alone: it is silent until it has cleared. [–]
 */
export function outgrew(finding: KeptFinding, episode: TimedEpisode): boolean {
  const isAtRate = AT_A_RATE.includes(finding.kind) && AT_A_RATE.includes(episode.kind);
  return isAtRate && SILENCES[finding.dismissedReason ?? 'other'] > 0 && !covers(finding, episode);
}

function isDismissedBefore({ state, decidedAt }: KeptFinding, { openedAt }: TimedEpisode): boolean {
  return state === 'dismissed' && decidedAt !== null && openedAt - decidedAt < BELIEVED_MS;
}

function covers({ dismissedReason, litres }: KeptFinding, episode: TimedEpisode): boolean {
  const share = SILENCES[dismissedReason ?? 'other'];
  if (share === 0) return false;
  return litres === null || episode.litres === null || episode.litres <= share * litres;
}
