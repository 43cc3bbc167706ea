import type { DraftRow } from '../../drafts/draft-row.js';
import type { LaidOutFile, LaidOutRows, RecognizedFile } from '../../drafts/laid-out-file.js';
import type { Names } from '../../drafts/names.js';
import type { Separator } from '../../files/sniff-separator.js';
import { FileRefusal, type RawRecord, type TableFile } from '../../files/table-file.js';
import { type Problem, problemAt } from '../../problems/problem.js';
import { chooseStation, type StationChoice } from './choose-station.js';
import { type DayGiven, dayRow } from './day-row.js';
import { gatheredDays, recordsOf, type StationReading } from './gather-days.js';
import { type Heading, plainHeading, understoodHeading } from './heading.js';
import { dayColumns, type DayField } from './day-values.js';
import type { StationLayout } from './station-layout.js';

/** A station's file whose layout is known by its heading. */
export interface StationFile {
  readonly table: TableFile;
  readonly layout: StationLayout;
  readonly heading: Heading;
  /** What is wrong with the heading: the file is then refused. */
  readonly problems: readonly Problem[];
  readonly notices: readonly Problem[];
}

/** One of the lines with which a file begins. */
export interface FirstLine extends RawRecord {
  /** What stands between the cells, where the file is text. */
  readonly separator?: Separator;
  readonly isFirst: boolean;
}

/** Which layout a line is the heading of, if any; the first line of a file may also be told from data. */
export function stationFile(
  table: TableFile,
  layouts: readonly StationLayout[],
  { line, cells, separator, isFirst }: FirstLine,
): StationFile | null {
  for (const layout of layouts) {
    const assumed = isFirst ? layout.assumedHeading?.(cells) : null;
    const understood = understoodHeading(table.name, layout, assumed ? 0 : line, assumed ?? cells);
    if (understood) return { table, layout, ...understood, heading: { ...understood.heading, ...(separator && { separator }) } };
  }
  return null;
}

/** Whether a cell is the heading of a column of one of the layouts. */
export function isStationHeading(layouts: readonly StationLayout[], cell: string): boolean {
  const key = plainHeading(cell);
  return layouts.some(({ columns, unused, otherNames = {} }) => key in columns || key in otherNames || unused.includes(key));
}

/** Reads a station's file: whose it is, what it gives, and its days on their way to the checks of weather rows. */
export async function readStationFile(file: StationFile, names: Names): Promise<LaidOutFile> {
  const stations = await stationsIn(file);
  const choice = chooseStation(file.table, stations, names);
  const none = { recognized: recognizedAs(file, choice, false), parts: [] };
  if (file.problems.length > 0) return { ...none, refused: file.problems };
  const elevationM = choice.station === null ? null : names.elevationOf(choice.station);
  const reading = { ...file, only: choice.only, elevationM };
  const surveyed = await survey(reading, choice.station ?? '');
  const recognized = recognizedAs(file, choice, surveyed.fields.has('windMPerS'));
  const refused = refusals(file, choice, recognized, surveyed);
  if (refused.length > 0) return { recognized, refused, parts: [] };
  const given = givenOf(reading, choice.station ?? '', recognized.windHeightM, surveyed.fields);
  return { recognized, refused, parts: [rowsOf(file, reading, given, surveyed)] };
}

/** The height that a layout tells counts, whatever is stated: of several files that is said at once. */
function recognizedAs({ table, layout }: StationFile, { station }: StationChoice, hasWind: boolean): RecognizedFile {
  const windHeightM = layout.windHeightM ?? table.meaning?.windHeightM ?? null;
  const asksWindHeight = hasWind && layout.windHeightM === null;
  return { layout: layout.name, belongsTo: 'station', station, asksWindHeight, windHeightM, property: null, meter: null };
}

function refusals(
  { table, heading }: StationFile,
  choice: StationChoice,
  recognized: RecognizedFile,
  { rowCount, notices }: Survey,
): Problem[] {
  const at = { file: table.name, line: null };
  if (choice.problem) return [choice.problem];
  if (recognized.asksWindHeight && recognized.windHeightM === null) return [problemAt(at, 'WIND_HEIGHT_NOT_STATED')];
  if (rowCount > 0) return [];
  const empty = problemAt({ ...at, line: heading.line || null }, 'FILE_WITHOUT_DAYS');
  return [empty, ...notices];
}

/** More stations than any network has. */
const MOST_STATIONS = 300_000;

/** The stations that a file names. */
async function stationsIn({ table, layout, heading }: StationFile): Promise<ReadonlySet<string>> {
  const place = layout.stationColumn && heading.places.get(layout.stationColumn)?.place;
  const found = new Set<string>();
  if (typeof place !== 'number') return found;
  for await (const { cells } of recordsOf({ table, heading })) {
    if (found.size >= MOST_STATIONS) break;
    found.add((cells[place] ?? '').trim());
  }
  return found;
}

/** As many as there are days from 1900 to 2100, which are all that a file can tell of honestly. */
const MOST_NOTICES = 73_414;

interface Survey {
  readonly rowCount: number;
  /** The values of which the file has any. */
  readonly fields: ReadonlySet<DayField>;
  readonly notices: readonly Problem[];
}

/** Reads a file to its end without keeping a row, so that one that breaks off in the middle gives none. */
async function survey(reading: StationReading, station: string): Promise<Survey> {
  const sources = reading.layout.gives(reading.heading);
  const all = givenOf(reading, station, 1, new Set(Object.keys(sources) as DayField[]));
  const fields = new Set<DayField>();
  const notices: Problem[] = [];
  let rowCount = 0;
  for await (const day of gatheredDays(reading)) {
    const { row, values, leftOut } = dayRow(reading, all, day);
    if (row) rowCount += 1;
    if (notices.length < MOST_NOTICES) notices.push(...leftOut);
    for (const field of Object.keys(values) as DayField[]) if (field in sources) fields.add(field);
  }
  return { rowCount, fields, notices };
}

function givenOf(
  { layout, heading }: StationReading,
  station: string,
  windHeightM: number | null,
  fields: ReadonlySet<DayField>,
): DayGiven {
  const sources = Object.fromEntries(Object.entries(layout.gives(heading)).filter(([field]) => fields.has(field as DayField)));
  const own = (Object.keys(sources) as DayField[]).map((field) => dayColumns[field]);
  const columns = new Set<string>(['station', 'date', ...own, ...('windMPerS' in sources ? ['wind_height_ft'] : [])]);
  return { station, windHeightM, sources, columns };
}

function rowsOf(file: StationFile, reading: StationReading, given: DayGiven, { rowCount, notices }: Survey): LaidOutRows {
  const { heading, layout, table } = file;
  const own = layout.notice ? [problemAt({ file: table.name, line: null }, layout.notice)] : [];
  return {
    file: 'weather',
    header: heading.cells,
    columns: given.columns,
    notices: [...file.notices, ...own, ...notices],
    rowCount,
    rows: () => rows(reading, given, rowCount),
  };
}

async function* rows(reading: StationReading, given: DayGiven, expected: number): AsyncGenerator<DraftRow> {
  let count = 0;
  for await (const day of gatheredDays(reading)) {
    const { row } = dayRow(reading, given, day);
    if (!row) continue;
    count += 1;
    yield row;
  }
  if (count !== expected) throw new FileRefusal('FILE_CHANGED', { found: String(count), expected: String(expected) });
}
