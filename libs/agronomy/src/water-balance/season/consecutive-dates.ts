import { DomainError } from '@rillbook/units/domain-error.js';

/** Milliseconds of a day. */
const DAY = 86_400_000;

/**
 * The dates of a season, looked at: each the day after the one before.
 *
 * @param days - Days with their date, YYYY-MM-DD. [code]
 * @returns The dates. [code]
 * @throws {DomainError} `SEASON_DATES_OUT_OF_ORDER` when a date cannot be, is missing or comes twice.
 * @source The calendar.
 */
export function consecutiveDates(days: readonly { readonly date: string }[]): ReadonlySet<string> {
  days.forEach(({ date }, at) => {
    const instant = Date.parse(`${date}T00:00:00Z`);
    const before = at === 0 ? instant - DAY : Date.parse(`${days[at - 1]?.date}T00:00:00Z`);
    if (!(instant - before === DAY)) throw new DomainError('SEASON_DATES_OUT_OF_ORDER', { date, at });
  });
  return new Set(days.map(({ date }) => date));
}
