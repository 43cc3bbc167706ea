import { Temporal } from 'temporal-polyfill';

/** What the clock of a place shows at an instant, 'YYYY-MM-DDTHH:mm'. */
export const wallTime = (instant: Date, timeZone: string): string =>
  Temporal.Instant.fromEpochMilliseconds(instant.getTime())
    .toZonedDateTimeISO(timeZone)
    .toPlainDateTime()
    .toString({ smallestUnit: 'minute' });
