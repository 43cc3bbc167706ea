import type { ReadingSeries, SeriesReading } from './reading-series.js';

/** A register lies on another meter's course when it stands between its neighbours in time, or this many of its own steps beyond the last. */
const STEPS_BEYOND = 2;

/**
 * Whose meter may have been read instead: one on whose own course the register lies at that time.
 *
 * Only readings of the other meter that were known at that time are looked at.
 *
 * @param reading - The doubtful reading. [any]
 * @param series - The meter and those about it. [any]
 * @returns The other meter, or null. [code]
 */
export function otherMeterOf(reading: SeriesReading, series: ReadingSeries): string | null {
  const found = series.others.filter(({ readings }) => isOnCourse(reading, readings));
  return found.length === 1 ? (found[0]?.meterId ?? null) : null;
}

function isOnCourse({ localDay, register }: SeriesReading, readings: readonly SeriesReading[]): boolean {
  const known = readings.filter((other) => other.localDay <= localDay + 1);
  const [before, last] = known.slice(-2);
  if (!last || !before) return false;
  const perDay = (last.register - before.register) / (last.localDay - before.localDay);
  if (!(perDay >= 0)) return false;
  const days = Math.max(1, localDay - last.localDay);
  const step = perDay * Math.max(days, last.localDay - before.localDay);
  const low = localDay <= last.localDay + 1 ? before.register : last.register;
  return register >= low && register <= last.register + STEPS_BEYOND * step;
}
