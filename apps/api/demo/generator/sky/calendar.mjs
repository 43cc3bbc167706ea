// The demo's clock is the wall clock of the valley, counted in minutes and days since 1970. The hour that daylight
// saving skips or repeats is left out of every story, so no offset is needed.

const MINUTES_A_DAY = 1440;
const WEEKDAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];

/** @param {string} date `2026-09-23` */
export const dayOf = (date) => Date.parse(`${date}T00:00Z`) / 86_400_000;
/** @param {string} instant `2026-09-23T07:10` */
export const minuteOf = (instant) => Date.parse(`${instant}Z`) / 60_000;
export const dateText = (day) => new Date(day * 86_400_000).toISOString().slice(0, 10);
export const instantText = (minute) => new Date(Math.round(minute) * 60_000).toISOString().slice(0, 16);
export const monthText = (day) => dateText(day).slice(0, 7);
export const dayAt = (minute) => Math.floor(minute / MINUTES_A_DAY);
export const startOfDay = (day) => day * MINUTES_A_DAY;
export const weekday = (day) => WEEKDAYS[(((day + 4) % 7) + 7) % 7];

/** The day's place in its year, 1 to 366. */
export function dayOfYear(day) {
  return day - dayOf(`${dateText(day).slice(0, 4)}-01-01`) + 1;
}

/** @param {string} month `2026-09` */
export function daysOfMonth(month, lastDay = Number.POSITIVE_INFINITY) {
  const days = [];
  for (let day = dayOf(`${month}-01`); monthText(day) === month && day <= lastDay; day += 1) days.push(day);
  return days;
}

/** Every month from the first to the last, both included. */
export function monthsFrom(first, last) {
  const months = [];
  for (let month = first; month <= last; month = monthText(dayOf(`${month}-28`) + 5)) months.push(month);
  return months;
}

// What every part of the demo agrees on.
export const WEATHER_FROM = dayOf('2025-04-01');
export const WORK_FROM = dayOf('2025-06-28');
export const LAST_DAY = dayOf('2026-09-23');
