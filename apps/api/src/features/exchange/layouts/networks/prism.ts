import { bounds, sourceUnits as in_ } from '../station/source-units.js';
import type { StationLayout } from '../station/station-layout.js';
import type { StationLine } from '../station/station-line.js';
import { dayIn } from './calendar-cells.js';
import { oneLineDay, present } from './one-line-day.js';

const MONTH = /^\d{4}-?\d{2}$/;
const temperature = { bounds: bounds.temperature, units: [in_.fahrenheit, in_.celsius], isUnitWritten: true };

function dayOf(line: StationLine): string | null {
  const text = line.text('date');
  if (!MONTH.test(text)) return dayIn(line, 'date');
  line.refuse('MONTH_NOT_DAY', 'date', { found: text, expected: 'yyyy-mm-dd' });
  return null;
}

/** A time series of one cell of the PRISM grid: about ten lines of words, then a heading that names the units. */
export const prism: StationLayout = {
  name: 'prism',
  columns: {
    date: 'text',
    ppt: { bounds: bounds.rain, units: [in_.inches, in_.millimetres], isUnitWritten: true },
    tmin: temperature,
    tmax: temperature,
    tdmean: temperature,
  },
  unused: ['tmean', 'vpdmin', 'vpdmax', 'name', 'longitude', 'latitude', 'elevation'],
  isHeading: (has) => has('date') && !has('station') && (has('ppt') || (has('tmin') && has('tmax'))) && !has('hour'),
  missing: [-9999],
  windHeightM: null,
  dayLies: 'alone',
  notice: 'DAY_ENDS_AT_NOON_UTC',
  gives: present({ tmaxC: 'tmax', tminC: 'tmin', dewPointC: 'tdmean', rainMm: 'ppt' }),
  read: (line) => ({
    day: dayOf(line),
    part: 'day',
    values: { tmaxC: line.number('tmax'), tminC: line.number('tmin'), dewPointC: line.number('tdmean'), rainMm: line.number('ppt') },
  }),
  settle: oneLineDay,
};
