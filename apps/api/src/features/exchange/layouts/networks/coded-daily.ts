import { bounds, sourceUnits as in_ } from '../station/source-units.js';
import type { StationLayout } from '../station/station-layout.js';
import { dayOfThree } from './calendar-cells.js';
import { oneLineDay, present } from './one-line-day.js';

const temperature = { bounds: bounds.temperature, units: [in_.fahrenheit] };

/** Daily values under the two-letter codes of the AgriMet network, as Ref-ET reads them: °F, langleys, mph, inches. */
export const codedDaily: StationLayout = {
  name: 'coded-daily',
  columns: {
    year: 'text',
    month: 'text',
    day: 'text',
    mn: temperature,
    mx: temperature,
    ym: temperature,
    sr: { bounds: bounds.solar, units: [in_.langleys] },
    ua: { bounds: bounds.wind, units: [in_.milesPerHour] },
    pp: { bounds: bounds.rain, units: [in_.inches] },
    etos: { bounds: bounds.evapotranspiration, units: [in_.inches] },
  },
  unused: ['etrs', 'mm', 'ta', 'wr', 'pc'],
  isHeading: (has) => ['year', 'month', 'day'].every(has) && !has('hour') && ['mn', 'mx', 'sr', 'ym', 'ua'].filter(has).length >= 2,
  missing: ['no record', 'no data', -999],
  windHeightM: null,
  dayLies: 'alone',
  gives: present({ tmaxC: 'mx', tminC: 'mn', dewPointC: 'ym', windMPerS: 'ua', solarMjPerM2: 'sr', rainMm: 'pp', givenEtoMm: 'etos' }),
  read: (line) => ({
    day: dayOfThree(line, 'year', 'month', 'day'),
    part: 'day',
    values: {
      tmaxC: line.number('mx'),
      tminC: line.number('mn'),
      dewPointC: line.number('ym'),
      windMPerS: line.number('ua'),
      solarMjPerM2: line.number('sr'),
      rainMm: line.number('pp'),
      givenEtoMm: line.number('etos'),
    },
  }),
  settle: oneLineDay,
};
