import { bounds, sourceUnits as in_ } from '../station/source-units.js';
import type { DayField, Piece, SettledDay } from '../station/day-values.js';
import type { StationLayout } from '../station/station-layout.js';
import type { StationLine } from '../station/station-line.js';
import { dayIn } from './calendar-cells.js';

/** The columns of the layout; files by year come without a heading. */
const COLUMNS: readonly string[] = ['id', 'date', 'element', 'value', 'mflag', 'qflag', 'sflag', 'obstime'];
const STATION = /^[A-Z]{2}[A-Z0-9_-]{9}$/;
const ELEMENT = /^[A-Z0-9]{4}$/;

/** The elements that are read, and the column of values by whose unit each is read. */
const ELEMENTS: Readonly<Record<string, readonly [DayField, 'tenths c' | 'tenths mm' | 'tenths m/s' | 'percent']>> = {
  TMAX: ['tmaxC', 'tenths c'],
  TMIN: ['tminC', 'tenths c'],
  ADPT: ['dewPointC', 'tenths c'],
  RHMX: ['rhMaxPercent', 'percent'],
  RHMN: ['rhMinPercent', 'percent'],
  AWND: ['windMPerS', 'tenths m/s'],
  PRCP: ['rainMm', 'tenths mm'],
};

function valueOf(line: StationLine, unit: string): number | null {
  // What failed a check may be any number, and is not read.
  if (line.text('qflag') === '') return line.numberAs('value', unit);
  line.note('VALUE_FAILED_CHECK', 'value', { expected: `${line.text('element')}, QFLAG ${line.text('qflag')}` });
  return null;
}

/** Daily values of GHCN-Daily, an element a line, in tenths; a quality flag means that a value failed a check. */
export const ghcnDaily: StationLayout = {
  name: 'ghcn-daily',
  columns: {
    id: 'text',
    date: 'text',
    element: 'text',
    qflag: 'text',
    value: { bounds: bounds.temperature, units: [in_.tenthsOfCelsius] },
    'tenths c': { bounds: bounds.temperature, units: [in_.tenthsOfCelsius] },
    'tenths mm': { bounds: bounds.rain, units: [in_.tenthsOfMillimetres] },
    'tenths m/s': { bounds: bounds.wind, units: [in_.tenthsOfMetresPerSecond] },
    percent: { bounds: bounds.humidity, units: [in_.percent] },
  },
  // As the files by station have them, from memory.
  otherNames: { data_value: 'value', m_flag: 'mflag', q_flag: 'qflag', s_flag: 'sflag', obs_time: 'obstime' },
  unused: ['mflag', 'sflag', 'obstime'],
  isHeading: (has) => ['id', 'date', 'element', 'value', 'qflag'].every(has),
  assumedHeading: (cells) =>
    cells.length >= 7 &&
    cells.length <= COLUMNS.length &&
    STATION.test(cells[0] ?? '') &&
    /^\d{8}$/.test(cells[1] ?? '') &&
    ELEMENT.test(cells[2] ?? '')
      ? COLUMNS
      : null,
  missing: [-9999],
  windHeightM: null,
  stationColumn: 'id',
  dayLies: 'anywhere',
  gives: () => Object.fromEntries(Object.values(ELEMENTS).map(([field]) => [field, 'value'])),
  read(line) {
    const element = line.text('element');
    if (!ELEMENT.test(element)) {
      line.refuse('NOT_ONE_OF', 'element', { found: element, expected: Object.keys(ELEMENTS).join(', ') });
      return { day: null, part: '', values: {} };
    }
    const [field, unit] = ELEMENTS[element] ?? [];
    if (field === undefined || unit === undefined) return null;
    return { day: dayIn(line, 'date'), part: field, values: { [field]: valueOf(line, unit) } };
  },
  settle: (pieces: readonly Piece[]): SettledDay => ({ values: Object.assign({}, ...pieces.map(({ values }) => values)), notes: [] }),
};
