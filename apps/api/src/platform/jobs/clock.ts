import { Temporal } from 'temporal-polyfill';

/** What the clock of an organization needs to know of it. */
export interface ClockSetting {
  readonly timeZone: string;
  /** the day on which a demonstration's world stands still, or null in the living world */
  readonly standsStillOn: string | null;
}

/** The instant now. In a world that stands still, the day is fixed and only the time of day moves. */
export function nowOf(setting: ClockSetting): Date {
  const now = Temporal.Now.zonedDateTimeISO(setting.timeZone);
  if (!setting.standsStillOn) return new Date(now.epochMilliseconds);
  const fixed = Temporal.PlainDate.from(setting.standsStillOn).toZonedDateTime({
    timeZone: setting.timeZone,
    plainTime: now.toPlainTime(),
  });
  return new Date(fixed.epochMilliseconds);
}

/** The local date today, as YYYY-MM-DD. */
export function todayOf(setting: ClockSetting): string {
  return setting.standsStillOn ?? Temporal.Now.plainDateISO(setting.timeZone).toString();
}
