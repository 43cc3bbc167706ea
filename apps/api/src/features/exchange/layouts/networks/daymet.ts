import { dewPointFromVapourPressure } from '@rillbook/agronomy/evapotranspiration/vapour/dew-point-from-vapour-pressure.js';
import { kilopascals } from '@rillbook/units/pressure.js';
import { daysAfter } from '../../columns/time-cells.js';
import { bounds, sourceUnits as in_ } from '../station/source-units.js';
import type { StationLayout } from '../station/station-layout.js';
import type { StationLine } from '../station/station-line.js';
import { oneLineDay, present } from './one-line-day.js';

const JOULES_PER_MEGAJOULE = 1e6;

/**
 * Daily radiation from its mean over the daylight: H = srad · dayl / 10^6.
 *
 * @param srad mean over the daylight [W/m2]
 * @param dayl length of the daylight [s]
 * @returns [MJ/m2]
 */
export function daylightRadiation(srad: number, dayl: number): number {
  return (srad * dayl) / JOULES_PER_MEGAJOULE;
}

/** Day 1 is 1 January, also in leap years, whose 31 December is not in the file. */
function dayOf(line: StationLine): string | null {
  const [year, yday] = [line.number('year'), line.number('yday')];
  if (year !== null && yday !== null && Number.isInteger(year) && Number.isInteger(yday)) return daysAfter(`${year}-01-01`, yday - 1);
  if (line.faults.length === 0)
    line.refuse('NOT_A_DATE', 'yday', { found: `${line.text('year')} ${line.text('yday')}`, expected: 'year, yday' });
  return null;
}

/** Daily values of one cell of the Daymet grid: metric, a year of 365 days. */
export const daymet: StationLayout = {
  name: 'daymet',
  columns: {
    year: { bounds: bounds.year, units: [in_.count] },
    yday: { bounds: bounds.dayOf365, units: [in_.count] },
    dayl: { bounds: bounds.daylight, units: [in_.seconds] },
    prcp: { bounds: bounds.rain, units: [in_.millimetres] },
    srad: { bounds: bounds.daylightSolar, units: [in_.watts] },
    tmax: { bounds: bounds.temperature, units: [in_.celsius] },
    tmin: { bounds: bounds.temperature, units: [in_.celsius] },
    vp: { bounds: bounds.vapourPressure, units: [in_.pascals] },
  },
  unused: ['swe'],
  isHeading: (has) => has('year') && has('yday') && ['prcp', 'tmax', 'tmin', 'srad', 'vp'].some(has),
  missing: [-9999],
  windHeightM: null,
  dayLies: 'alone',
  gives(heading) {
    const sources = present({ tmaxC: 'tmax', tminC: 'tmin', dewPointC: 'vp', solarMjPerM2: 'srad', rainMm: 'prcp' })(heading);
    if (heading.places.has('dayl')) return sources;
    const { solarMjPerM2: _, ...others } = sources;
    return others;
  },
  read(line) {
    const [srad, dayl, vapour] = [line.number('srad'), line.number('dayl'), line.number('vp')];
    return {
      day: dayOf(line),
      part: 'day',
      values: {
        tmaxC: line.number('tmax'),
        tminC: line.number('tmin'),
        dewPointC: vapour === null ? null : dewPointFromVapourPressure(kilopascals(vapour)),
        solarMjPerM2: srad === null || dayl === null ? null : daylightRadiation(srad, dayl),
        rainMm: line.number('prcp'),
      },
    };
  },
  settle: oneLineDay,
};
