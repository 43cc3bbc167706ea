import { Temporal } from 'temporal-polyfill';

const MS_PER_DAY = 86_400_000;
const NS_PER_MS = 1_000_000;

/** A time during which the clocks of a zone keep one offset. [ms] */
interface Steady {
  readonly from: number;
  readonly offset: number;
}

/** The clocks of a zone, by the calendar years that were asked for. Kept for the life of the process: zones do not change under it. */
const years = new Map<string, readonly Steady[]>();

/**
 * The instants at which the clocks of a zone show a wall time, in order: one, none where they are moved past it, two where it occurs twice.
 *
 * @param wallMs the wall time as if it were UTC [ms since 1970]
 */
export function instantsOf(zone: string, wallMs: number): readonly number[] {
  const steady = clocksOf(zone, wallMs);
  const found: number[] = [];
  for (let at = 0; at < steady.length; at += 1) {
    const { from, offset } = steady[at] as Steady;
    const instant = wallMs - offset;
    if (instant >= from && instant < (steady[at + 1]?.from ?? Number.POSITIVE_INFINITY)) found.push(instant);
  }
  return found;
}

/** The first instant of a wall day: where the clocks skip midnight, the instant at which they skip it. */
export function startOfDay(zone: string, wallMs: number): number {
  const first = instantsOf(zone, wallMs)[0];
  if (first !== undefined) return first;
  const steady = clocksOf(zone, wallMs);
  const after = steady.find(({ from, offset }, at) => from + (steady[at - 1]?.offset ?? offset) <= wallMs && wallMs < from + offset);
  return after?.from ?? wallMs;
}

/** What the clocks of a zone show at an instant: the wall time as if it were UTC, and the offset from it. [ms] */
export function wallOf(zone: string, instant: number): { readonly wallMs: number; readonly offsetMs: number } {
  const steady = clocksOf(zone, instant);
  let offsetMs = steady[0]?.offset ?? 0;
  for (const { from, offset } of steady) if (instant >= from) offsetMs = offset;
  return { wallMs: instant + offsetMs, offsetMs };
}

function clocksOf(zone: string, ms: number): readonly Steady[] {
  const year = new Date(ms).getUTCFullYear();
  const key = `${zone} ${year}`;
  const known = years.get(key);
  if (known) return known;
  const made = clocksOfYear(zone, year);
  years.set(key, made);
  return made;
}

/** The year with three days to either side, further than any wall time is from UTC. */
function clocksOfYear(zone: string, year: number): readonly Steady[] {
  const until = Date.UTC(year + 1, 0, 1) + 3 * MS_PER_DAY;
  let at: Temporal.ZonedDateTime | null = Temporal.Instant.fromEpochMilliseconds(Date.UTC(year, 0, 1) - 3 * MS_PER_DAY).toZonedDateTimeISO(
    zone,
  );
  const steady: Steady[] = [];
  while (at && at.epochMilliseconds < until) {
    steady.push({ from: at.epochMilliseconds, offset: Math.round(at.offsetNanoseconds / NS_PER_MS) });
    at = at.getTimeZoneTransition('next');
  }
  return steady;
}
