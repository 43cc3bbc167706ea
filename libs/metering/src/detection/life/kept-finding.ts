import type { FindingCandidate, FindingKind } from '../finding-candidate.js';

/** The states of a finding's life. */
export type LifeState = 'open' | 'in work' | 'resolved' | 'dismissed';

/** Why a finding was dismissed: the detector learns from the reason. */
export const dismissReasons = [
  'hand watering known',
  'meter known to be off',
  'client wants it',
  'looked after',
  'numbers are wrong',
  'not worth the trip',
  'not useful',
  'other',
] as const;

/** One of the reasons. */
export type DismissReason = (typeof dismissReasons)[number];

/** An episode with instants, in milliseconds since 1970. [ms] */
export interface TimedEpisode extends FindingCandidate {
  readonly openedAt: number;
  readonly clearedAt: number | null;
}

/**
 * A finding as it is kept, as far as its life asks. Instants are in milliseconds since 1970; `decidedAt` is null while nobody has decided.
 * `isPast` marks one that had ended before anybody was told of it: it follows the records, and goes when they tell otherwise.
 */
export interface KeptFinding {
  readonly id: string;
  readonly kind: FindingKind;
  readonly causeKey: string;
  readonly causeFamily: string;
  readonly meterId: string | null;
  readonly controllerId: string | null;
  readonly zoneId: string | null;
  readonly state: LifeState;
  readonly openedAt: number;
  readonly clearedAt: number | null;
  readonly litres: number | null;
  readonly cameBack: number;
  readonly decidedAt: number | null;
  readonly dismissedReason: DismissReason | null;
  readonly isPast: boolean;
}
