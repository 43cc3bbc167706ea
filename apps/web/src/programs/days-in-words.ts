import type { IntlShape } from 'react-intl';
import type { Formats } from '../i18n/formats.js';

/** A Monday to a Sunday whose names the language is asked for. */
const WEEK: Readonly<Record<string, string>> = {
  Mon: '2024-01-01',
  Tue: '2024-01-02',
  Wed: '2024-01-03',
  Thu: '2024-01-04',
  Fri: '2024-01-05',
  Sat: '2024-01-06',
  Sun: '2024-01-07',
};
const EVERY = /^every (\d+) from (\d{4}-\d{2}-\d{2})$/;

/** The days of a program in the reader's language: every day, odd days, Tue Thu Sat, every 3 days from a date. */
export function daysInWords(intl: IntlShape, { day }: Formats, days: string): string {
  if (days === 'daily' || days === 'odd' || days === 'even') return intl.formatMessage({ id: `property.days.${days}` });
  const every = EVERY.exec(days);
  if (every) return intl.formatMessage({ id: 'property.days.every' }, { count: Number(every[1]), day: day(every[2]) });
  const named = days.split(' ').flatMap((name) => WEEK[name] ?? []);
  if (named.length === 0) return days || intl.formatMessage({ id: 'property.days.none' });
  return named.length === Object.keys(WEEK).length
    ? intl.formatMessage({ id: 'property.days.daily' })
    : named.map((date) => day(date).split(' ')[0]).join(' ');
}

/** A clock 'HH:MM' as the language tells it. */
export const clockInWords = ({ time }: Formats, clock: string): string => time(`2024-01-01T${clock}:00Z`, 'UTC');
