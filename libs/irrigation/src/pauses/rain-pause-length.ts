import { DomainError } from '@rillbook/units/domain-error.js';

/** What a zone does without, and whether its soil and plants are on record; with a guess for either its days are a guess too. */
export interface PausedZone {
  readonly zoneId: string;
  /** Whole days from today on that need no irrigation. [d] */
  readonly days: number;
  readonly isKnown: boolean;
}

/** What bounds a pause: the first root zone that is used up, common practice where something is not known, a rule, or what is worth setting. */
export type PauseBecause = 'root zone' | 'common practice' | 'rule' | 'longest';

/** How long a controller can be paused, why no longer, and the zone that is the first to need water. */
export interface RainPauseLength {
  /** Whole days from today on. [d] */
  readonly days: number;
  readonly because: PauseBecause;
  readonly firstZoneId: string;
}

/** Pauses of 24 to 48 hours are what the trade sets after rain: common practice, no source. Two whole days bound what is only guessed. */
const PRACTICE_DAYS = 2;

/** Longer is a shut-down and not a rain pause; somebody looks again. An assumption. */
const LONGEST_DAYS = 14;

/**
 * How long a controller can be paused after rain: until the first of its zones needs water.
 *
 * Where soil or plants of a zone are not on record, common practice bounds the pause at 48 hours. Where a rule forbids watering for longer
 * after rain, the pause lasts as long as the rule.
 *
 * @param zones - What each zone of the controller does without; those that nothing waters left out. [d]
 * @param ruleDays - Whole days from today on that a rule forbids after rain; 0 without one. [d]
 * @returns The pause, or null where not even one whole day can be waited. [d]
 * @throws {DomainError} `PAUSE_WITHOUT_ZONES` when no zone is given.
 */
export function rainPauseLength(zones: readonly PausedZone[], ruleDays: number): RainPauseLength | null {
  const [first, ...others] = zones;
  if (!first) throw new DomainError('PAUSE_WITHOUT_ZONES', {});
  const thirsty = others.reduce((least, zone) => (zone.days < least.days ? zone : least), first);
  const isGuessed = zones.some(({ isKnown }) => !isKnown);
  const most = isGuessed ? PRACTICE_DAYS : LONGEST_DAYS;
  const free: RainPauseLength = {
    days: Math.min(thirsty.days, most),
    because: thirsty.days <= most ? 'root zone' : isGuessed ? 'common practice' : 'longest',
    firstZoneId: thirsty.zoneId,
  };
  const bound: RainPauseLength = ruleDays > free.days ? { ...free, days: ruleDays, because: 'rule' } : free;
  return bound.days >= 1 ? bound : null;
}
