// findings.csv of a fleet as the libraries alone would write it: each meter judged by itself, without the product's database and import.
import { judgeHourly } from '../../../../libs/metering/dist/detection/hourly/judge-hourly.js';
import { judgeMonthly } from '../../../../libs/metering/dist/detection/monthly/judge-monthly.js';
import { judgeReadings } from '../../../../libs/metering/dist/detection/readings/judge-readings.js';
import { readingEpisodes } from '../../../../libs/metering/dist/detection/readings/reading-episodes.js';
import { csvText } from '../../../../apps/api/demo/generator/tables/csv.mjs';
import { instantOf } from './evidence.mjs';

const LITRES_PER_GALLON = 3.785411784;
const TOLD = { minConfidence: 0.9, minLitres: 757.0823568, minMoney: 1 };
const WRONG = new Set([
  'implausibly high',
  'lower than last',
  'unit mixed up',
  'digits swapped',
  'digit mistyped',
  'another meter',
  'stuck',
]);
const HEADER = [
  ...['property', 'meter', 'controller', 'zone', 'kind', 'from', 'until', 'gallons', 'money', 'confidence', 'state', 'opened_at', 'says'],
];

/** Sums from the first day on; what is not known counts as `unknown`. */
function sumsOf(values, days, unknown) {
  const sum = new Float64Array(days + 1);
  values.forEach((value, day) => {
    sum[day + 1] = sum[day] + (Number.isNaN(value) ? unknown : value);
  });
  return sum;
}

/** Litres that plants may need or settings put out between two instants, whichever is more, and what people use. */
function demandOf({ kind, firstDay, days, programmedLitres, neededLitres, indoorLitresPerDay }) {
  if (kind === 'mixed' && indoorLitresPerDay === null) return null;
  const sums = [programmedLitres, neededLitres].map((values) => sumsOf(values, days, 0));
  const at = (sum, day) => sum[Math.min(days, Math.max(0, Math.floor(day) - firstDay))];
  return (from, until) => Math.max(...sums.map((sum) => at(sum, until) - at(sum, from))) + (indoorLitresPerDay ?? 0) * (until - from);
}

/** Litres that settings put out between two instants; null where they are not known. */
function programmedOf({ firstDay, days, programmedLitres }) {
  const sum = sumsOf(programmedLitres, days, Number.NaN);
  const at = (day) => sum[Math.min(days, Math.max(0, Math.floor(day) - firstDay))];
  return (from, until) => {
    const litres = at(until) - at(from);
    return Number.isNaN(litres) ? null : litres;
  };
}

const isGood = ({ judgement, isRight }) => !WRONG.has(judgement) || isRight === true || judgement === 'stuck';

function litresBetween({ litresPerRegisterUnit, digits }, from, until) {
  const moved = until - from;
  return (moved < 0 ? moved + 10 ** digits : moved) * litresPerRegisterUnit;
}

/** Intervals between neighbouring readings that are believed. */
function intervalsOf(series, judged, resolutionLitres) {
  const good = judged.filter(isGood);
  return good.slice(1).map((next, at) => ({
    ...{ fromLocalDay: good[at].localDay, toLocalDay: next.localDay, source: 'readings' },
    ...{ litres: litresBetween(series, good[at].register, next.register), sdLitres: resolutionLitres * Math.sqrt(1 / 6) },
  }));
}

/** The interval in which a meter was changed: to the old one's last register, and from the new one's first. */
function acrossSwap({ earlier, series, swapAt, evidence }, before, after) {
  const [last] = before.filter(isGood).slice(-1);
  const next = after.find(isGood);
  if (!last || !next) return [];
  const litres = litresBetween(earlier, last.register, swapAt.last) + litresBetween(series, swapAt.first, next.register);
  const sdLitres = evidence.resolutionLitres * Math.sqrt(1 / 3);
  return [{ fromLocalDay: last.localDay, toLocalDay: next.localDay, source: 'readings', litres, sdLitres }];
}

function livesOf({ evidence, earlier, series: own }) {
  const demandLitres = demandOf(evidence);
  return (earlier ? [earlier, own] : [own]).map((series) => {
    const full = { ...series, others: [], demandLitres, programmedLitres: programmedOf(evidence) };
    const judged = judgeReadings(full);
    const resolution = evidence.resolutionLitres * (series.litresPerRegisterUnit / own.litresPerRegisterUnit);
    return { judged, doubtful: readingEpisodes(full, judged), read: intervalsOf(series, judged, resolution) };
  });
}

/** Intervals of readings that are believed, else of bills. */
export function monthlyIntervals(meter, [first, second] = livesOf(meter)) {
  const read = second ? [...first.read, ...acrossSwap(meter, first.judged, second.judged), ...second.read] : first.read;
  return read.length ? read : meter.evidence.intervals;
}

/** All episodes of one meter. A feed takes the place of readings and bills. */
export function episodesOf(meter, told = TOLD) {
  const { evidence } = meter;
  const lives = livesOf(meter);
  const doubtful = lives.flatMap((life) => life.doubtful);
  if (evidence.usage) return [...doubtful, ...judgeHourly(evidence)];
  return [...doubtful, ...judgeMonthly({ ...evidence, intervals: monthlyIntervals(meter, lives), billed: evidence.intervals }, told)];
}

const rowOf = ({ property, meter, evidence }, episode) => [
  ...[property, meter, episode.controllerId ?? '', episode.zoneIds.length < 4 ? episode.zoneIds.join('; ') : '', episode.kind],
  ...[episode.fromDate, episode.untilDate, episode.litres === null ? '' : (episode.litres / LITRES_PER_GALLON).toFixed(0), ''],
  ...[episode.confidence.toFixed(4), episode.clearedLocalDay === null ? 'open' : 'resolved'],
  ...[instantOf(evidence.midnights, evidence.firstDay, episode.openedLocalDay), episode.says.code],
];

/** @returns {string} findings.csv */
export function judgedFindings(meters, told) {
  const rows = meters.flatMap((meter) => episodesOf(meter, told).map((episode) => rowOf(meter, episode)));
  return csvText({ header: HEADER, rows });
}
