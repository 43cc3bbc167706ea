import { atmosphericPressure } from '@rillbook/agronomy/evapotranspiration/air/atmospheric-pressure.js';
import { dewPointFromVapourPressure } from '@rillbook/agronomy/evapotranspiration/vapour/dew-point-from-vapour-pressure.js';
import { vapourPressureFromSpecificHumidity } from '@rillbook/agronomy/evapotranspiration/vapour/vapour-pressure-from-specific-humidity.js';
import { metres } from '@rillbook/units/length.js';
import type { Heading } from '../station/heading.js';
import { bounds, sourceUnits as in_ } from '../station/source-units.js';
import type { StationLayout } from '../station/station-layout.js';
import type { StationLine } from '../station/station-line.js';
import { dayIn } from './calendar-cells.js';
import { oneLineDay, present } from './one-line-day.js';

/** The height of the grid's wind. [m] */
const WIND_HEIGHT_M = 10;

const DATES = ['date', 'day', 'time'] as const;
const temperature = { bounds: bounds.temperature, units: [in_.kelvin] };

/** The humidity of the air where the file gives no relative humidity: needs the pressure, and so the elevation. */
function dewPoint(line: StationLine): number | null {
  const humidity = line.number('sph');
  if (humidity === null) return null;
  if (line.elevationM === null) {
    line.note('DEW_POINT_NEEDS_ELEVATION', 'sph');
    return null;
  }
  const pressure = atmosphericPressure(metres(line.elevationM));
  return dewPointFromVapourPressure(vapourPressureFromSpecificHumidity(humidity, pressure));
}

const hasHumidities = ({ places }: Heading): boolean => places.has('rmax') && places.has('rmin');

/** Daily values of one cell of the gridMET grid: kelvin, mm, wind at 10 m. */
export const gridmet: StationLayout = {
  name: 'gridmet',
  columns: {
    ...Object.fromEntries(DATES.map((name) => [name, 'text' as const])),
    tmmx: temperature,
    tmmn: temperature,
    rmax: { bounds: bounds.humidity, units: [in_.percent] },
    rmin: { bounds: bounds.humidity, units: [in_.percent] },
    srad: { bounds: bounds.solar, units: [in_.wattsForADay] },
    vs: { bounds: bounds.wind, units: [in_.metresPerSecond] },
    sph: { bounds: bounds.specificHumidity, units: [in_.perKilogram] },
    pr: { bounds: bounds.rain, units: [in_.millimetres] },
    eto: { bounds: bounds.evapotranspiration, units: [in_.millimetres] },
  },
  unused: ['th', 'etr', 'vpd', 'bi', 'erc', 'fm100', 'fm1000', 'lat', 'lon', 'pet'],
  isHeading: (has) => DATES.some(has) && has('tmmx') && has('tmmn'),
  // Programs that cut a cell out of a grid write a missing value so.
  missing: ['nan', -9999, 32_767],
  windHeightM: WIND_HEIGHT_M,
  dayLies: 'alone',
  gives(heading) {
    const sources = present({
      tmaxC: 'tmmx',
      tminC: 'tmmn',
      rhMaxPercent: 'rmax',
      rhMinPercent: 'rmin',
      dewPointC: 'sph',
      windMPerS: 'vs',
      solarMjPerM2: 'srad',
      rainMm: 'pr',
      givenEtoMm: 'eto',
    })(heading);
    if (!hasHumidities(heading)) return sources;
    const { dewPointC: _, ...others } = sources;
    return others;
  },
  read: (line) => ({
    day: dayIn(line, DATES.find((name) => line.has(name)) ?? 'date'),
    part: 'day',
    values: {
      tmaxC: line.number('tmmx'),
      tminC: line.number('tmmn'),
      rhMaxPercent: line.number('rmax'),
      rhMinPercent: line.number('rmin'),
      dewPointC: line.has('rmax') && line.has('rmin') ? null : dewPoint(line),
      windMPerS: line.number('vs'),
      solarMjPerM2: line.number('srad'),
      rainMm: line.number('pr'),
      givenEtoMm: line.number('eto'),
    },
  }),
  settle: oneLineDay,
};
