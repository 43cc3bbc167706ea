import { dateOfDayNumber, dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';

/** The days of a stretch on which a property's visit interval ends, if each visit is made when it is due; overdue is due at once. */
export function dueVisits(everyDays: number, lastVisit: string | null, from: string, until: string): readonly string[] {
  const [first, last] = [dayNumberOfDate(from), dayNumberOfDate(until)];
  const next = lastVisit === null ? first : Math.max(first, dayNumberOfDate(lastVisit) + everyDays);
  const days: string[] = [];
  for (let day = next; day <= last; day += everyDays) days.push(dateOfDayNumber(day));
  return days;
}
