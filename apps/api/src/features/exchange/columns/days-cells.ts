import type { ProgramDays, Weekday } from '@rillbook/irrigation/settings/settings-fact.js';
import { type Cell, Fault } from './column.js';
import { date } from './time-cells.js';

const WEEKDAYS: readonly Weekday[] = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
const LONG_NAMES = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'];
const EVERY = /^every\s+(\d{1,2})\s+from\s+(\S+)$/i;
const MOST_DAYS_APART = 60;

/** The days of a program: `Mon Wed Fri`, `daily`, `odd`, `even` or `every 3 from 2026-06-01`. */
export const programDays: Cell<ProgramDays> = {
  read(text) {
    const word = text.toLowerCase();
    if (word === 'daily' || word === 'odd' || word === 'even') return { kind: word };
    const every = EVERY.exec(text);
    if (every) return interval(Number(every[1]), every[2] ?? '');
    const weekdays = weekdaysOf(text);
    return weekdays === null ? notDays() : { kind: 'weekdays', weekdays };
  },
  write(days) {
    if (days.kind === 'weekdays') return days.weekdays.join(' ');
    return days.kind === 'every' ? `every ${days.everyDays} from ${days.from}` : days.kind;
  },
};

function interval(everyDays: number, from: string): ProgramDays | Fault {
  if (everyDays < 1 || everyDays > MOST_DAYS_APART || date.read(from) instanceof Fault) return notDays();
  return { kind: 'every', everyDays, from };
}

function notDays(): Fault {
  return new Fault('NOT_DAYS', 'Mon Wed Fri | daily | odd | even | every 3 from 2026-06-01');
}

/** The days of the week in their order, or null where a word is none or stands twice. */
function weekdaysOf(text: string): readonly Weekday[] | null {
  const found = new Set<Weekday>();
  for (const word of text.split(/[\s,;]+/).filter((part) => part !== '')) {
    const at = LONG_NAMES.findIndex((day) => day === word.toLowerCase() || day.slice(0, 3) === word.toLowerCase());
    const day = WEEKDAYS[at];
    if (day === undefined || found.has(day)) return null;
    found.add(day);
  }
  return found.size === 0 ? null : WEEKDAYS.filter((day) => found.has(day));
}

/** The days that a watering rule allows, kept as text: weekdays, `odd`, `even`, or `none` where nothing may be watered. */
export const allowedDays: Cell<string> = {
  read(text) {
    const word = text.toLowerCase();
    if (word === 'none' || word === 'odd' || word === 'even') return word;
    return weekdaysOf(text)?.join(' ') ?? new Fault('NOT_DAYS', 'Mon Thu | odd | even | none');
  },
  write: (value) => value,
};
