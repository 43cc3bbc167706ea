const CLOCK = /^([01]\d|2[0-3]):([0-5]\d)$/;
const MINUTES_PER_HOUR = 60;

/** Minutes after midnight of a clock time 'HH:MM'; null where it is none. [min] */
export function minutesOfClock(text: string): number | null {
  const [, hours, minutes] = CLOCK.exec(text) ?? [];
  return hours && minutes ? Number(hours) * MINUTES_PER_HOUR + Number(minutes) : null;
}
