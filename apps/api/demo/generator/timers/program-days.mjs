// Which days a program runs, in the words of settings.csv.
import { dateText, dayOf, weekday } from '../sky/calendar.mjs';

const every = (days) => /^every (\d+) from (\S+)$/.exec(days);

export function runsOn(days, day) {
  if (days === 'daily') return true;
  const date = Number(dateText(day).slice(8));
  if (days === 'odd') return date % 2 === 1;
  if (days === 'even') return date % 2 === 0;
  const rhythm = every(days);
  if (rhythm) return day >= dayOf(rhythm[2]) && (day - dayOf(rhythm[2])) % Number(rhythm[1]) === 0;
  return days.split(' ').includes(weekday(day));
}

export function daysAWeek(days) {
  if (days === 'daily') return 7;
  if (days === 'odd' || days === 'even') return 3.5;
  const rhythm = every(days);
  return rhythm ? 7 / Number(rhythm[1]) : days.split(' ').length;
}

/** Minutes after midnight of each start. */
export const startsOf = (program) => program.starts.split(' ').map((text) => Number(text.slice(0, 2)) * 60 + Number(text.slice(3)));
