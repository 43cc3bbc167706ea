import type { WrittenInstant } from '../../columns/column.js';
import { plainDigits } from '../../columns/number-cells.js';
import { DraftRow } from '../../drafts/draft-row.js';
import type { KnownMeter } from '../../drafts/known.js';
import { FileRefusal } from '../../files/table-file.js';
import { codeWords, QUALITY } from './espi-codes.js';
import type { FeedOutline } from './feed-outline.js';
import { FeedReader, type FeedReading } from './feed-reader.js';
import type { WaterSeries } from './feed-series.js';

/** Where the rows of a feed go. */
export interface FeedTarget {
  readonly fileName: string;
  readonly bytes: () => AsyncIterable<Buffer>;
  readonly outline: FeedOutline;
  readonly meter: KnownMeter;
}

/** The header under which rows of a feed are given back: they can be mended as rows of the import. */
export const FEED_HEADERS = {
  delta: ['property', 'meter', 'start', 'end', 'volume', 'unit'],
  bulk: ['property', 'meter', 'read_at', 'register', 'source'],
} as const;

const MS_PER_SECOND = 1000;
/** 2100-01-01T00:00Z in seconds since 1970; before it every start is of ten digits at most. */
const LATEST_START = 4_102_444_800;
const LONGEST_INTERVAL = 400 * 86_400;
const WHOLE = /^\d{1,10}$/;
const VALUE = /^-?\d{1,15}$/;
const LARGEST = 1e12;

/** An instant from seconds since 1970 in UTC, whatever the meter's clock shows. */
export function instantFrom(seconds: number): WrittenInstant {
  return { wallMs: seconds * MS_PER_SECOND, offsetMinutes: 0, wholeDay: false };
}

/** A value with its power of ten, without the error of a factor below one. */
export function scaled(value: number, powerOfTen: number): number {
  return powerOfTen < 0 ? value / 10 ** -powerOfTen : value * 10 ** powerOfTen;
}

/** The rows of one series of a feed, as they are met. */
export async function* feedRows(target: FeedTarget, series: WaterSeries): AsyncGenerator<DraftRow> {
  for await (const reading of readingsOf(target, series)) {
    if (!qualities(reading, series).includes(QUALITY.failed))
      yield series.accumulates === 'delta' ? usageRow(target, series, reading) : readingRow(target, series, reading);
  }
}

/** The readings of a series, in the order of the feed. */
export async function* readingsOf({ bytes, outline }: FeedTarget, series: WaterSeries): AsyncGenerator<FeedReading> {
  const met: FeedReading[] = [];
  const isOurs = new Map<number, boolean>();
  const reader = new FeedReader({
    reading: (reading) => {
      if (!isOurs.has(reading.block)) {
        isOurs.clear();
        isOurs.set(reading.block, outline.seriesOf(reading.block) === series.thing);
      }
      if (isOurs.get(reading.block)) met.push(reading);
    },
  });
  for await (const chunk of bytes()) {
    reader.push(chunk);
    yield* met.splice(0);
  }
  reader.end();
  yield* met;
}

/** What is said of the quality of a reading, or else of all of its series. */
export function qualities({ qualities: own }: FeedReading, { defaultQuality }: WaterSeries): readonly string[] {
  return own.length > 0 || defaultQuality === null ? own : [defaultQuality];
}

function usageRow(target: FeedTarget, series: WaterSeries, reading: FeedReading): DraftRow {
  const row = rowOf(target, series, reading, 'usage');
  const [start, duration] = [whole(row, 'start', reading.start, LATEST_START), whole(row, 'duration', reading.duration, LONGEST_INTERVAL)];
  const volume = valueOf(row, series, reading);
  row.headings.set('volume', 'value').set('end', 'duration');
  row.shown['start'] = reading.start;
  row.shown['end'] = reading.duration;
  if (start !== null && duration !== null) {
    row.values['start'] = instantFrom(start);
    row.values['end'] = instantFrom(start + duration);
  }
  if (volume !== null) row.values['volume'] = volume;
  row.values['unit'] = series.unit.unit;
  return row;
}

/** A register stands where it is read: at the end of its period. Common practice, no source. */
function readingRow(target: FeedTarget, series: WaterSeries, reading: FeedReading): DraftRow {
  const row = rowOf(target, series, reading, 'readings');
  const start = whole(row, 'start', reading.start, LATEST_START);
  const duration = reading.duration === '' ? 0 : whole(row, 'duration', reading.duration, LONGEST_INTERVAL);
  const register = valueOf(row, series, reading);
  row.headings.set('read_at', 'start').set('register', 'value');
  row.shown['read_at'] = reading.start;
  if (start !== null && duration !== null) row.values['readAt'] = instantFrom(start + duration);
  if (register !== null) row.values['register'] = register / (target.meter.multiplier ?? 1);
  row.values['source'] = 'feed';
  row.values['note'] = null;
  return row;
}

function rowOf({ fileName, meter }: FeedTarget, series: WaterSeries, reading: FeedReading, file: 'usage' | 'readings'): DraftRow {
  const header = FEED_HEADERS[series.accumulates];
  const row = new DraftRow(fileName, file, reading.line, cellsOf(meter, series, reading), new Set(header));
  row.values['property'] = meter.property;
  row.values['meter'] = meter.meter;
  const estimated = qualities(reading, series).find((quality) => (QUALITY.estimated as readonly string[]).includes(quality));
  if (estimated !== undefined) row.warn('READING_ESTIMATED', { column: 'quality', found: codeWords('quality', estimated) });
  return row;
}

/** The row as one of the import, with what could be read of it. */
function cellsOf({ property, meter, multiplier }: KnownMeter, series: WaterSeries, reading: FeedReading): readonly string[] {
  const [start, end] = periodOf(reading);
  if (series.accumulates === 'delta') return [property, meter, start, end, valueText(series, reading, 1), series.unit.unit];
  return [property, meter, end, valueText(series, reading, multiplier ?? 1), 'feed'];
}

function periodOf({ start, duration }: FeedReading): readonly [string, string] {
  const at = (seconds: number): string => new Date(seconds * MS_PER_SECOND).toISOString();
  const isPlaced = WHOLE.test(start) && Number(start) <= LATEST_START && /^\d{0,8}$/.test(duration);
  return isPlaced ? [at(Number(start)), at(Number(start) + Number(duration))] : [start, duration];
}

function valueText({ unit, powerOfTen }: WaterSeries, { value }: FeedReading, multiplier: number): string {
  return VALUE.test(value) ? plainDigits((scaled(Number(value), powerOfTen) * unit.times) / multiplier) : value;
}

function whole(row: DraftRow, column: string, text: string, max: number): number | null {
  const expected = `≥ 0, ≤ ${max} s`;
  if (text === '') row.refuse('MISSING_VALUE', { column });
  else if (!WHOLE.test(text)) row.refuse('NOT_A_NUMBER', { column, found: text, expected });
  else if (Number(text) > max) row.refuse('OUT_OF_RANGE', { column, found: text, expected });
  else return Number(text);
  return null;
}

function valueOf(row: DraftRow, { unit, powerOfTen }: WaterSeries, { value: text }: FeedReading): number | null {
  const expected = `≥ 0, ≤ ${LARGEST}`;
  const value = scaled(Number(text), powerOfTen) * unit.times;
  if (text === '') row.refuse('MISSING_VALUE', { column: 'value' });
  else if (!VALUE.test(text)) row.refuse('NOT_A_NUMBER', { column: 'value', found: text, expected });
  else if (!(value >= 0 && value <= LARGEST)) row.refuse('OUT_OF_RANGE', { column: 'value', found: text, expected });
  else return value;
  return null;
}

/** A feed that gives another number of rows than before is no longer the one that was looked at. */
export function sameCount(found: number, expected: number): void {
  if (found !== expected) throw new FileRefusal('FILE_CHANGED', { found: String(found), expected: String(expected) });
}
