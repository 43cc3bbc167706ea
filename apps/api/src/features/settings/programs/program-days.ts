import type { ProgramDays, Weekday } from '@rillbook/irrigation/settings/settings-fact.js';

const WEEKDAYS: readonly Weekday[] = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
const EVERY = /^every ([1-9]\d?) from (\d{4}-\d\d-\d\d)$/;

/** The days of a program from its words, exactly as the import folder has them; null where they are none of these. */
export function programDaysOf(words: string): ProgramDays | null {
  if (words === 'daily' || words === 'odd' || words === 'even') return { kind: words };
  const [, everyDays, from] = EVERY.exec(words) ?? [];
  if (everyDays && from) return isDate(from) ? { kind: 'every', everyDays: Number(everyDays), from } : null;
  const weekdays = words.split(' ') as Weekday[];
  const known = weekdays.every((day) => WEEKDAYS.includes(day)) && new Set(weekdays).size === weekdays.length;
  return known ? { kind: 'weekdays', weekdays } : null;
}

/** February has no 30th: the calendar gives another day back. */
function isDate(text: string): boolean {
  const instant = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(instant.getTime()) && instant.toISOString().startsWith(text);
}
