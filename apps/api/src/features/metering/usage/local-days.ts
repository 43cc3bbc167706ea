import { dateOfDayNumber } from '@rillbook/irrigation/calendar/local-date.js';
import { Temporal } from 'temporal-polyfill';

const MS_PER_DAY = 86_400_000;

/** The days of one time zone as spans of instants: of 23, 24 or 25 hours. Remembers those that were asked for. */
export class LocalDays {
  private readonly starts = new Map<number, number>();
  private latest = 0;

  constructor(private readonly timeZone: string) {}

  /** The instant at which a day begins, by its day number since 1970-01-01. [ms] */
  startOf(day: number): number {
    const known = this.starts.get(day);
    if (known !== undefined) return known;
    const start = Temporal.PlainDate.from(dateOfDayNumber(day)).toZonedDateTime(this.timeZone).epochMilliseconds;
    this.starts.set(day, start);
    return start;
  }

  /** The day of an instant. Quick for instants that come in order. */
  dayOf(instant: number): number {
    let day =
      instant >= this.startOf(this.latest) && instant < this.startOf(this.latest + 1) ? this.latest : Math.floor(instant / MS_PER_DAY);
    while (instant < this.startOf(day)) day -= 1;
    while (instant >= this.startOf(day + 1)) day += 1;
    this.latest = day;
    return day;
  }
}
