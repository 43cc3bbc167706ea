import type { IntlShape } from 'react-intl';
import type { Choice } from '../../../../ui/forms/Select.js';

/** A Monday; the days after it have the names of the week in their order. */
const MONDAY = Date.UTC(2024, 0, 1);
const DAY_MS = 86_400_000;
const DAYS = [1, 2, 3, 4, 5, 6, 7] as const;

const nameOf = (intl: IntlShape, day: number, weekday: 'long' | 'short'): string =>
  intl.formatDate(MONDAY + DAY_MS * (day - 1), { weekday, timeZone: 'UTC' });

export const weekdayChoices = (intl: IntlShape): readonly Choice<string>[] =>
  DAYS.map((day) => ({ value: String(day), words: nameOf(intl, day, 'long') }));

/** Mon to Fri, or Mon, Wed, in the reader's language. Monday 1 to Sunday 7. */
export function weekdaysInWords(intl: IntlShape, days: readonly number[]): string {
  const sorted = [...days].sort((one, other) => one - other);
  const [first, last] = [sorted[0], sorted.at(-1)];
  if (first === undefined || last === undefined) return intl.formatMessage({ id: 'setup.crew.noDays' });
  const isRun = sorted.length > 2 && last - first === sorted.length - 1;
  const named = (isRun ? [first, last] : sorted).map((day) => nameOf(intl, day, 'short'));
  return isRun ? intl.formatMessage({ id: 'setup.fromTo' }, { from: named[0], until: named[1] }) : named.join(', ');
}
