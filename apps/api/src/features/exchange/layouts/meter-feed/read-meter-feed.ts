import type { DraftRow } from '../../drafts/draft-row.js';
import type { LaidOutFile, LaidOutRows, RecognizedFile } from '../../drafts/laid-out-file.js';
import type { KnownMeter } from '../../drafts/known.js';
import type { Names } from '../../drafts/names.js';
import type { TableFile } from '../../files/table-file.js';
import { type Problem, problemAt } from '../../problems/problem.js';
import { chooseMeter } from './choose-meter.js';
import { codeWords, QUALITY } from './espi-codes.js';
import { FeedOutline } from './feed-outline.js';
import { FEED_HEADERS, type FeedTarget, feedRows, qualities, readingsOf, sameCount } from './feed-rows.js';
import { type WaterSeries, waterSeries } from './feed-series.js';

/** A file of XML with its bytes. */
export type FeedFile = TableFile & { readonly bytes: () => AsyncIterable<Buffer> };

/** Reads a meter's feed: whose it is, what it counts, and its readings on their way to the checks of usage and readings. */
export async function readMeterFeed(file: FeedFile, names: Names): Promise<LaidOutFile> {
  const at = { file: file.name, line: null };
  const { meter, problem } = chooseMeter(file, names);
  const recognized = recognizedAs(meter);
  const refuse = (...refused: readonly Problem[]): LaidOutFile => ({ recognized, refused, parts: [] });
  const outline = await FeedOutline.of(file.bytes());
  if (outline.readings === 0) return refuse(problemAt(at, 'FEED_WITHOUT_READINGS'));
  const series = waterSeries(file.name, outline);
  if (!areSeries(series)) return refuse(...series);
  if (!meter) return refuse(problem ?? problemAt(at, 'METER_NOT_CHOSEN'));
  const unit = registerUnit(at, meter, series);
  if (unit) return refuse(unit);
  const target: FeedTarget = { fileName: file.name, bytes: file.bytes, outline, meter };
  const parts: LaidOutRows[] = [];
  for (const one of series) parts.push(await partOf(target, one));
  return { recognized, refused: [], parts };
}

function recognizedAs(meter: KnownMeter | null): RecognizedFile {
  const [property, name] = [meter?.property ?? null, meter?.meter ?? null];
  return { layout: 'espi', belongsTo: 'meter', station: null, asksWindHeight: false, windHeightM: null, property, meter: name };
}

function areSeries(found: readonly WaterSeries[] | readonly Problem[]): found is readonly WaterSeries[] {
  return found.every((one) => 'unit' in one);
}

/** A register is kept in the unit of its meter: where it rolls over depends on it, so it is not converted. */
function registerUnit(at: { file: string; line: null }, meter: KnownMeter, series: readonly WaterSeries[]): Problem | null {
  const other = series.find(({ accumulates, unit }) => accumulates === 'bulk' && (unit.unit !== meter.unit || unit.times !== 1));
  return other ? problemAt(at, 'REGISTER_IN_OTHER_UNIT', { column: 'uom', found: other.uom, expected: meter.unit }) : null;
}

async function partOf(target: FeedTarget, series: WaterSeries): Promise<LaidOutRows> {
  const { rowCount, notices } = await survey(target, series);
  const header = FEED_HEADERS[series.accumulates];
  return {
    file: series.accumulates === 'delta' ? 'usage' : 'readings',
    header,
    columns: new Set(header),
    notices,
    rowCount,
    rows: () => rows(target, series, rowCount),
  };
}

/** A year of quarters of an hour has 35,040. */
const MOST_NOTICES = 100_000;

/** Counts the rows of a series, and tells of the readings that are left out. */
async function survey(target: FeedTarget, series: WaterSeries): Promise<{ rowCount: number; notices: readonly Problem[] }> {
  let rowCount = 0;
  const notices: Problem[] = [];
  for await (const reading of readingsOf(target, series)) {
    if (!qualities(reading, series).includes(QUALITY.failed)) rowCount += 1;
    else if (notices.length < MOST_NOTICES) {
      const place = { file: target.fileName, line: reading.line };
      notices.push(problemAt(place, 'READING_FAILED_CHECK', { column: 'quality', found: codeWords('quality', QUALITY.failed) }));
    }
  }
  return { rowCount, notices };
}

async function* rows(target: FeedTarget, series: WaterSeries, expected: number): AsyncGenerator<DraftRow> {
  let count = 0;
  for await (const row of feedRows(target, series)) {
    count += 1;
    yield row;
  }
  sameCount(count, expected);
}
