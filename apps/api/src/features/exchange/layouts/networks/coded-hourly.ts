import { bounds, sourceUnits as in_ } from '../station/source-units.js';
import type { StationLayout } from '../station/station-layout.js';
import type { StationLine } from '../station/station-line.js';
import { dayOfThree, hourEnding } from './calendar-cells.js';
import { dayOfHours } from './day-of-hours.js';
import { present } from './one-line-day.js';

const HOUR = /^([01]?\d|2[0-4])$/;

function clockHour(line: StationLine): number | null {
  const text = line.text('hour');
  if (HOUR.test(text)) return Number(text);
  line.refuse('NOT_AN_HOUR', 'hour', { found: text, expected: '0 – 24' });
  return null;
}

/** Hourly values under the codes of the AgriMet network, as Ref-ET reads them: each hour is named by its end, in local standard time. */
export const codedHourly: StationLayout = {
  name: 'coded-hourly',
  columns: {
    year: 'text',
    month: 'text',
    day: 'text',
    hour: 'text',
    ob: { bounds: bounds.temperature, units: [in_.fahrenheit] },
    tp: { bounds: bounds.temperature, units: [in_.fahrenheit] },
    ws: { bounds: bounds.wind, units: [in_.milesPerHour] },
    si: { bounds: bounds.hourlySolar, units: [in_.langleys] },
  },
  unused: ['etrs', 'etos', 'pc', 'tu', 'wd', 'wg'],
  isHeading: (has) => ['year', 'month', 'day', 'hour'].every(has) && ['ob', 'tp', 'ws', 'si'].filter(has).length >= 2,
  missing: ['no record', 'no data', -999],
  windHeightM: null,
  dayLies: 'together',
  gives: present({ tmaxC: 'ob', tminC: 'ob', dewPointC: 'tp', windMPerS: 'ws', solarMjPerM2: 'si' }),
  read(line) {
    const date = dayOfThree(line, 'year', 'month', 'day');
    const hour = clockHour(line);
    const ends = date === null || hour === null ? null : hourEnding(date, hour);
    return {
      day: ends?.day ?? null,
      part: String(ends?.hour ?? ''),
      values: { ob: line.number('ob'), tp: line.number('tp'), ws: line.number('ws'), si: line.number('si') },
    };
  },
  settle: (pieces) =>
    dayOfHours(pieces, [
      { field: 'tmaxC', from: 'ob', column: 'OB', by: 'highest' },
      { field: 'tminC', from: 'ob', column: 'OB', by: 'lowest' },
      { field: 'dewPointC', from: 'tp', column: 'TP', by: 'mean' },
      { field: 'windMPerS', from: 'ws', column: 'WS', by: 'mean' },
      { field: 'solarMjPerM2', from: 'si', column: 'SI', by: 'course' },
    ]),
};
