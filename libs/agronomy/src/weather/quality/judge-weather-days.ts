import { dayNumber } from '../day-number.js';
import type { WeatherValue } from '../plausible-weather-day.js';
import type { RecordedDay } from '../recorded-day.js';
import type { WeatherDay } from '../weather-day.js';
import type { WeatherStation } from '../weather-station.js';
import type { CheckedDay } from './checked-day.js';
import { clearSky } from './clear-sky.js';
import { dawnHumidity } from './dawn-humidity.js';
import { persistentValues } from './persistent-values.js';
import { rangeMarks } from './range-marks.js';
import { stepChanges } from './step-changes.js';
import { unusualValues } from './unusual-values.js';
import { weatherMark, type WeatherMark } from './weather-mark.js';

/** A day with its marks, and what may be used of it. */
export type JudgedDay = RecordedDay & {
  /** By value; a value without a mark passed every check. */
  readonly marks: readonly WeatherMark[];
  /** The day without the values that were refused. */
  readonly usable: WeatherDay;
};

/**
 * Judges the days of a station: every value by every check, in the sight of the days around it.
 *
 * @param days - The station's record, in any order; each date once. [any]
 * @param station - Where it was measured. [any]
 * @returns The days, oldest first, each with its marks. [any], one per day
 * @throws {DomainError} `DATE_OUT_OF_DOMAIN`, `LATITUDE_OUT_OF_DOMAIN`.
 * @source FAO Irrigation and Drainage Paper 56, Annex 5; ASCE-EWRI (2005), Appendix D: the checks name what is theirs.
 */
export function judgeWeatherDays(days: readonly RecordedDay[], station: WeatherStation): readonly JudgedDay[] {
  const numbered = days.map((day) => ({ ...day, number: dayNumber(day.date) })).sort((a, b) => a.number - b.number);
  // The later checks do not see what cannot be: one impossible value would mark its neighbours.
  const marks = numbered.map(({ measured }) => [...rangeMarks(measured)]);
  const checked: CheckedDay[] = numbered.map(({ date, number, measured }, at) => ({ date, number, day: without(measured, marks[at]!) }));
  const found = [
    unusualValues(checked),
    stepChanges(checked),
    persistentValues(checked),
    clearSky(checked, station),
    dawnHumidity(checked),
  ];
  for (const { at, value, reason } of found.flat()) marks[at]!.push(weatherMark(value, reason));
  return numbered.map(({ date, measured }, at) => ({ date, measured, marks: marks[at]!, usable: without(measured, marks[at]!) }));
}

/**
 * Whether a day may use a value without doubt.
 *
 * @param day - The judged day. [any]
 * @param value - Name of the value. [code]
 * @returns True where it was measured and neither doubted nor refused. [code]
 */
export function isSound(day: JudgedDay, value: WeatherValue): boolean {
  return day.usable[value] !== null && !day.marks.some((mark) => mark.value === value && mark.effect !== 'kept');
}

function without(measured: WeatherDay, marks: readonly WeatherMark[]): WeatherDay {
  const refused = marks.filter(({ effect }) => effect === 'refused');
  if (refused.length === 0) return measured;
  return { ...measured, ...Object.fromEntries(refused.map(({ value }) => [value, null])) };
}
