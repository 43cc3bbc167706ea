const HOUR_MIN = 60;
const LAST_HOUR = 24;
const DAY_MIN = 1440;

/** Minutes since midnight as an input of type time holds them: 07:05. */
export const typedClock = (minute: number): string =>
  `${String(Math.floor(minute / HOUR_MIN)).padStart(2, '0')}:${String(minute % HOUR_MIN).padStart(2, '0')}`;

/** Minutes since midnight of 07:05 or 7:05; 24:00 is the end of the day; null where it is no time of day. */
export function minuteOfClock(text: string): number | null {
  const found = /^(\d{1,2}):(\d{2})(?::00)?$/.exec(text.trim());
  if (!found) return null;
  const [hours, minutes] = [Number(found[1]), Number(found[2])];
  const isDay = minutes < HOUR_MIN && (hours < LAST_HOUR || (hours === LAST_HOUR && minutes === 0));
  return isDay ? HOUR_MIN * hours + minutes : null;
}

/** 7:05 AM, as the person's language writes it: minutes since midnight, in no time zone. */
export const clockInWords = (time: (at: string, timeZone: string) => string, minute: number): string => {
  const within = ((Math.round(minute) % DAY_MIN) + DAY_MIN) % DAY_MIN;
  return time(new Date(Date.UTC(2000, 0, 1, 0, within)).toISOString(), 'UTC');
};
