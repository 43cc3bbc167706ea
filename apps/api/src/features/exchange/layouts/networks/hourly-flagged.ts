import { dewPointFromVapourPressure } from '@rillbook/agronomy/evapotranspiration/vapour/dew-point-from-vapour-pressure.js';
import { kilopascals } from '@rillbook/units/pressure.js';
import { bounds, sourceUnits as in_ } from '../station/source-units.js';
import type { DayValues, Piece, SettledDay } from '../station/day-values.js';
import type { StationLayout } from '../station/station-layout.js';
import type { StationLine } from '../station/station-line.js';
import { dayIn, hourEnding } from './calendar-cells.js';
import { dayOfHours } from './day-of-hours.js';
import { present } from './one-line-day.js';

/** The columns of the layout, in their order. */
export const FLAGGED_COLUMNS: readonly string[] =
  'station,date,hour,doy,eto,qc,ppt,qc,sol,qc,vap,qc,tair,qc,rh,qc,dew,qc,wspd,qc,wdir,qc,tsoil,qc'.split(',');

/** Verdicts of the network's checks after which a value counts as missing. */
export const MISSING_FLAGS: readonly string[] = ['I', 'M', 'S', 'R', 'Y'];

const US_DATE = /^\d{1,2}\/\d{1,2}\/\d{4}$/;
const HOUR = /^(?:(?:[01]?\d|2[0-3])00|2400|0)$/;
/** Anemometers of the network stand at 2 m. Common practice of the network, from memory. [m] */
const WIND_HEIGHT_M = 2;

/** A value that the network's checks let stand: what they rejected may be any number, and is not read. */
function passed(line: StationLine, column: string): number | null {
  return MISSING_FLAGS.includes(line.text(`${column} qc`).toUpperCase()) ? null : line.number(column);
}

function clockHour(line: StationLine): number | null {
  const text = line.text('hour');
  if (HOUR.test(text)) return Number(text) / 100;
  line.refuse('NOT_AN_HOUR', 'hour', { found: text, expected: '0100 – 2400' });
  return null;
}

const VALUES = ['eto', 'ppt', 'sol', 'vap', 'tair', 'rh', 'dew', 'wspd'] as const;

/** Vapour can be averaged, dew points less well: the dew point of the mean vapour pressure comes first, the mean dew point after it. */
function settle(pieces: readonly Piece[]): SettledDay {
  const [vapour, dew] = (['vap', 'dew'] as const).map((from) =>
    dayOfHours(pieces, [{ field: 'dewPointC', from, column: from, by: 'mean' }]),
  );
  const meanVapour = vapour?.values.dewPointC ?? null;
  const rest = dayOfHours(pieces, [
    { field: 'tmaxC', from: 'tair', column: 'tair', by: 'highest' },
    { field: 'tminC', from: 'tair', column: 'tair', by: 'lowest' },
    { field: 'rhMaxPercent', from: 'rh', column: 'rh', by: 'highest' },
    { field: 'rhMinPercent', from: 'rh', column: 'rh', by: 'lowest' },
    { field: 'windMPerS', from: 'wspd', column: 'wspd', by: 'mean' },
    { field: 'solarMjPerM2', from: 'sol', column: 'sol', by: 'course' },
    { field: 'rainMm', from: 'ppt', column: 'ppt', by: 'sum' },
    { field: 'givenEtoMm', from: 'eto', column: 'eto', by: 'course' },
  ]);
  const dewPointC = meanVapour === null ? (dew?.values.dewPointC ?? null) : dewPointFromVapourPressure(kilopascals(meanVapour));
  const notes = dewPointC === null ? [...(dew?.notes ?? []), ...rest.notes] : rest.notes;
  return { values: { ...rest.values, dewPointC } satisfies DayValues, notes };
}

/** Hourly metric values with the verdict of a check behind each, 24 columns, hours named by their end in standard time (CIMIS). */
export const hourlyFlagged: StationLayout = {
  name: 'hourly-flagged',
  columns: {
    station: 'text',
    date: 'text',
    hour: 'text',
    eto: { bounds: bounds.evapotranspiration, units: [in_.millimetres] },
    ppt: { bounds: bounds.rain, units: [in_.millimetres] },
    sol: { bounds: bounds.hourlySolar, units: [in_.wattsForAnHour] },
    vap: { bounds: bounds.vapourPressure, units: [in_.kilopascals] },
    tair: { bounds: bounds.temperature, units: [in_.celsius] },
    rh: { bounds: bounds.humidity, units: [in_.percent] },
    dew: { bounds: bounds.temperature, units: [in_.celsius] },
    wspd: { bounds: bounds.wind, units: [in_.metresPerSecond] },
    ...Object.fromEntries(VALUES.map((name) => [`${name} qc`, 'text' as const])),
  },
  unused: ['doy', 'wdir', 'wdir qc', 'tsoil', 'tsoil qc'],
  isHeading: (has) => ['station', 'date', 'hour', 'tair', 'tair qc'].every(has),
  assumedHeading: (cells) =>
    cells.length === FLAGGED_COLUMNS.length && US_DATE.test(cells[1]?.trim() ?? '') && HOUR.test(cells[2]?.trim() ?? '')
      ? FLAGGED_COLUMNS
      : null,
  missing: ['--', -9999, -6999],
  windHeightM: WIND_HEIGHT_M,
  stationColumn: 'station',
  dayLies: 'together',
  gives(heading) {
    const dew = heading.places.has('vap') ? 'vap' : 'dew';
    return present({
      tmaxC: 'tair',
      tminC: 'tair',
      rhMaxPercent: 'rh',
      rhMinPercent: 'rh',
      dewPointC: dew,
      windMPerS: 'wspd',
      solarMjPerM2: 'sol',
      rainMm: 'ppt',
      givenEtoMm: 'eto',
    })(heading);
  },
  read(line) {
    const date = dayIn(line, 'date');
    const hour = clockHour(line);
    const ends = date === null || hour === null ? null : hourEnding(date, hour);
    const values = Object.fromEntries(VALUES.map((name) => [name, passed(line, name)]));
    return { day: ends?.day ?? null, part: String(ends?.hour ?? ''), values };
  },
  settle,
};
