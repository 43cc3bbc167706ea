const PARTS = { year: 'numeric', month: '2-digit', day: '2-digit', hour: '2-digit', minute: '2-digit', hourCycle: 'h23' } as const;

const clocks = new Map<string, Intl.DateTimeFormat>();

/** The clock of a place: made once, for making it takes longer than all that it tells. */
function clockOf(timeZone: string): Intl.DateTimeFormat {
  const clock = clocks.get(timeZone) ?? new Intl.DateTimeFormat('en-CA', { ...PARTS, timeZone });
  clocks.set(timeZone, clock);
  return clock;
}

/** Wall time of a place at an instant, 'YYYY-MM-DDTHH:mm'. */
export function localTimeAt(instant: number, timeZone: string): string {
  const parts = clockOf(timeZone).formatToParts(new Date(instant));
  const part = (type: Intl.DateTimeFormatPartTypes): string => parts.find((each) => each.type === type)?.value ?? '';
  return `${part('year')}-${part('month')}-${part('day')}T${part('hour')}:${part('minute')}`;
}

/** The instant of a wall time in a place. A time that the clock skips is the same minutes after the skip; one that comes twice is the first. */
export function instantOf(localTime: string, timeZone: string): string {
  const asIfUtc = Date.parse(`${localTime}:00Z`);
  const offsetAt = (instant: number): number => Date.parse(`${localTimeAt(instant, timeZone)}:00Z`) - instant;
  // The offset before the wall time and the one after it: where they differ, the earlier instant that shows this wall time.
  const candidates = [offsetAt(asIfUtc - 86_400_000), offsetAt(asIfUtc + 86_400_000)]
    .map((offset) => asIfUtc - offset)
    .sort((one, other) => one - other);
  const shown = candidates.find((instant) => localTimeAt(instant, timeZone) === localTime) ?? candidates.at(-1) ?? asIfUtc;
  return new Date(shown).toISOString();
}
