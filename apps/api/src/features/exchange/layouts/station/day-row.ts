import { DraftRow } from '../../drafts/draft-row.js';
import { type Problem, problemAt } from '../../problems/problem.js';
import type { GatheredDay, ReadLine, StationReading } from './gather-days.js';
import { bounds, type Bounds } from './source-units.js';
import { dayColumns, type DayField, type DayNote, type DayValues, type SettledDay } from './day-values.js';

/** What a station's file gives, and to whom. */
export interface DayGiven {
  readonly station: string;
  readonly windHeightM: number | null;
  /** The values that the file gives, each with the column it comes from. */
  readonly sources: { readonly [Field in DayField]?: string };
  /** The columns of weather.csv that it fills. */
  readonly columns: ReadonlySet<string>;
}

/** A day as a row of weather; or why it is left out, and what is to be said of it. */
export interface MadeDay {
  readonly row: DraftRow | null;
  readonly values: DayValues;
  readonly leftOut: readonly Problem[];
}

const fields = Object.keys(dayColumns) as DayField[];

const boundsOf: Readonly<Record<DayField, Bounds>> = {
  tmaxC: bounds.temperature,
  tminC: bounds.temperature,
  rhMaxPercent: bounds.humidity,
  rhMinPercent: bounds.humidity,
  dewPointC: bounds.temperature,
  windMPerS: bounds.wind,
  solarMjPerM2: bounds.solar,
  rainMm: bounds.rain,
  givenEtoMm: bounds.evapotranspiration,
};

/** Makes the row of a gathered day. A day of which nothing is known is left out: it would wipe out what is stored. */
export function dayRow(reading: StationReading, given: DayGiven, gathered: GatheredDay): MadeDay {
  const { layout, table } = reading;
  const { lines } = gathered;
  const first = lines[0]!.line.record;
  const row = new DraftRow(table.name, 'weather', first.line, first.cells, given.columns);
  row.lines = lines.map(({ line }) => line.record);
  for (const { line } of lines) row.problems.push(...said(table.name, line.record.line, line.faults));
  const { values, notes } = row.rejected ? NOTHING : layout.settle(lines.map(({ piece }) => piece));
  const noted = [...lines.flatMap(({ line }) => said(table.name, line.record.line, line.notes)), ...said(table.name, first.line, notes)];
  fill(row, reading, given, gathered, values);
  if (!row.rejected && fields.every((field) => (values[field] ?? null) === null))
    return { row: null, values, leftOut: [leftOut(table.name, gathered)] };
  row.warnings.push(...noted);
  return { row, values, leftOut: [] };
}

const NOTHING: SettledDay = { values: {}, notes: [] };

function fill(row: DraftRow, reading: StationReading, given: DayGiven, { day, lines }: GatheredDay, values: DayValues): void {
  row.values['station'] = given.station;
  if (day !== null) row.values['day'] = row.shown['date'] = day;
  for (const field of fields) {
    const source = given.sources[field];
    const value = source === undefined ? null : (values[field] ?? null);
    row.values[field] = value;
    if (source === undefined) continue;
    row.headings.set(dayColumns[field], reading.heading.places.get(source)?.heading ?? source);
    if (value !== null) show(row, field, shown(lines, source, value));
  }
  row.values['windHeightM'] = row.values['windMPerS'] === null ? null : given.windHeightM;
}

/** Shows where a value comes from, and refuses one that no day can have. */
function show(row: DraftRow, field: DayField, found: string): void {
  const [column, { min, max }] = [dayColumns[field], boundsOf[field]];
  row.shown[column] = found;
  const value = row.number(field);
  if (value !== null && (value < min || value > max)) row.refuse('OUT_OF_RANGE', { column, found, expected: `≥ ${min}, ≤ ${max}` });
}

/** The cell that a value comes from, or the value itself where it is made of several. */
function shown(lines: readonly ReadLine[], source: string, value: number): string {
  const text = lines.length === 1 ? lines[0]!.line.text(source) : '';
  return text || String(Number(value.toPrecision(6)));
}

function said(file: string, line: number, notes: readonly DayNote[]): Problem[] {
  return notes.map(({ code, parts }) => problemAt({ file, line }, code, parts));
}

function leftOut(file: string, { day, lines }: GatheredDay): Problem {
  return problemAt({ file, line: lines[0]!.line.record.line }, 'DAY_WITHOUT_VALUES', { found: day ?? '' });
}
