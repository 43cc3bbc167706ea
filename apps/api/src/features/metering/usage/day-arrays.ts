import { type VolumeUnit, litresFrom, volumeIn } from '@rillbook/units/volume.js';

/** One interval of a day's feed, in the unit of its day. [s] from the day's start */
export interface DayInterval {
  readonly start: number;
  readonly length: number;
  readonly volume: number;
}

/** A day's feed: intervals in order of time, all in one unit. */
export interface DayFeed {
  readonly unit: VolumeUnit;
  readonly intervals: readonly DayInterval[];
}

/** An interval as it comes in, in its own unit. */
export interface IncomingInterval extends DayInterval {
  readonly unit: VolumeUnit;
}

/** A day's feed with what came in, and what became of that. */
export interface MergedDay {
  readonly feed: DayFeed;
  readonly created: number;
  readonly changed: number;
  readonly same: number;
}

const SECONDS_PER_HOUR = 3600;
const SECONDS_PER_MINUTE = 60;

/**
 * Lays incoming intervals over a day's feed: each stands instead of those that it overlaps; the rest of the feed stays.
 *
 * The day keeps its unit while anything of it stays; what comes in another is converted to it.
 */
export function layOver(kept: DayFeed | null, incoming: readonly IncomingInterval[]): MergedDay {
  const fresh = inOrder(incoming);
  const stays = (kept?.intervals ?? []).filter((interval) => !fresh.some((other) => overlaps(interval, other)));
  const unit = stays.length ? kept!.unit : fresh[0]!.unit;
  const converted = fresh.map((interval) => ({ start: interval.start, length: interval.length, volume: inUnit(interval, unit) }));
  const before = new Map((kept?.intervals ?? []).map((interval) => [interval.start, interval]));
  const same = converted.filter((interval) => kept?.unit === unit && equal(interval, before.get(interval.start))).length;
  const created = converted.filter((interval) => !before.has(interval.start)).length;
  return {
    feed: { unit, intervals: [...stays, ...converted].sort((a, b) => a.start - b.start) },
    created,
    changed: converted.length - created - same,
    same,
  };
}

/** All the water of a day's feed. [L] */
export const totalLitres = ({ unit, intervals }: DayFeed): number =>
  litresFrom(
    intervals.reduce((sum, { volume }) => sum + volume, 0),
    unit,
  );

/**
 * The least flow of a day, over its intervals of an hour or less; null unless these cover the whole day, for the least may hide in a hole.
 *
 * @param daySeconds the day's real length [s]
 */
export function leastLPerMin({ unit, intervals }: DayFeed, daySeconds: number): number | null {
  const short = intervals.filter(({ length }) => length <= SECONDS_PER_HOUR);
  if (short.reduce((sum, { length }) => sum + length, 0) < daySeconds) return null;
  return Math.min(...short.map(({ volume, length }) => litresFrom(volume, unit) / (length / SECONDS_PER_MINUTE)));
}

/** In order of time; of several with one start the last that came in. */
function inOrder(incoming: readonly IncomingInterval[]): IncomingInterval[] {
  const byStart = new Map(incoming.map((interval) => [interval.start, interval]));
  return [...byStart.values()].sort((a, b) => a.start - b.start);
}

const overlaps = (a: DayInterval, b: DayInterval): boolean => a.start < b.start + b.length && b.start < a.start + a.length;

const equal = (a: DayInterval, b: DayInterval | undefined): boolean => b !== undefined && a.length === b.length && a.volume === b.volume;

const inUnit = ({ volume, unit }: IncomingInterval, wanted: VolumeUnit): number =>
  unit === wanted ? volume : volumeIn(litresFrom(volume, unit), wanted);
