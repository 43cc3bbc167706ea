import { probabilityAboveZero } from '@rillbook/metering/uncertainty/normal-probability.js';
import type { VolumeColumn } from '../../formats/formats.js';
import { drawGauge, type GaugeShape } from '../../gauge/draw-gauge.js';
import { type GaugeGap, type GaugeNumbers, type GaugeVolume, MARKS } from '../../gauge/drawing/model.js';
import { gaugeWordsOf } from '../../words/gauge-words.js';
import type { VolumeFigures, Writer } from '../figures.js';
import { nextMonth } from '../period-sums.js';
import type { GivenGap, GivenGaps, GivenMonth, GivenVolume, GivenVolumes } from '../report-input.js';
import type { Drawn, YearOfGauges } from '../report-model.js';

const MONTHS = 12;
/** Where it hardly rained, a shower must not look like a flood. [mm] */
const LEAST_RAIN_TOP_MM = 25;
const HEADROOM = 1.06;

/** Whether a gap is smaller than what can be measured, at a confidence. */
export const isWithin = ({ litres, sdLitres }: GivenGap, confidence: number): boolean =>
  litres !== null && sdLitres !== null && sdLitres > 0 && probabilityAboveZero(Math.abs(litres), sdLitres) < confidence;

const HALVINGS = 40;
const MOST_DEVIATIONS = 8;

/** The size up to which a gap does not count at a confidence, found by halving; null where its deviation is not known. [L] */
export function unseenLitres({ sdLitres }: GivenGap, confidence: number): number | null {
  if (sdLitres === null || !(sdLitres > 0)) return null;
  let [low, high] = [0, MOST_DEVIATIONS * sdLitres];
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    const middle = (low + high) / 2;
    if (probabilityAboveZero(middle, sdLitres) < confidence) low = middle;
    else high = middle;
  }
  return high;
}

/** The largest of some volumes, from which unit and rounding follow. */
export const largestOf = (months: readonly GivenVolumes[]): number =>
  Math.max(0, ...months.flatMap((month) => MARKS.map((mark) => Math.abs(month[mark].litres ?? 0))));

/** A drawing's own name says all that it shows. */
const drawn = (svg: string): Drawn => {
  const named = /aria-label="([^"]*)"/.exec(svg)?.[1] ?? '';
  return { svg, alt: unescaped(named) };
};

const SIGNS: Readonly<Record<string, string>> = { '&lt;': '<', '&gt;': '>', '&quot;': '"', '&#39;': "'", '&amp;': '&' };
const unescaped = (text: string): string => text.replace(/&(lt|gt|quot|#39|amp);/g, (entity) => SIGNS[entity] ?? entity);

/** The gauge of the period, written as the page writes its volumes. */
export function periodGauge(writer: Writer, sums: GivenVolumes & GivenGaps, { column, step }: VolumeFigures, confidence: number): Drawn {
  const numbers = { ...numbersOf(sums, { column, confidence, because: writer.words.because }), leastStep: step };
  const words = gaugeWordsOf(writer.formats, column);
  return { ...drawn(drawGauge(numbers, words, { size: 'print' })), phoneSvg: drawGauge(numbers, words, { size: 'phone', onPaper: true }) };
}

interface Shown {
  readonly column: VolumeColumn;
  readonly confidence: number;
  readonly because: (code: string | null) => string;
}

function numbersOf(from: GivenVolumes & GivenGaps, { column, confidence, because }: Shown): GaugeNumbers {
  const inUnit = (litres: number | null): number | null => (litres === null ? null : column.fromLitres(litres));
  const volume = ({ litres, sdLitres, estimatedShare, reason }: GivenVolume): GaugeVolume => ({
    value: inUnit(litres),
    sd: inUnit(sdLitres),
    estimated: estimatedShare > 0,
    ...(litres === null ? { missing: because(reason) } : {}),
  });
  const gap = (given: GivenGap): GaugeGap => ({
    value: inUnit(given.litres),
    sd: inUnit(given.sdLitres),
    money: given.money,
    within: isWithin(given, confidence),
  });
  return {
    volumes: {
      allowed: volume(from.allowed),
      needed: volume(from.needed),
      programmed: volume(from.programmed),
      metered: volume(from.metered),
    },
    gaps: { landscape: gap(from.landscapeGap), settings: gap(from.settingsGap), unexplained: gap(from.unexplainedGap) },
    aboveAllowed: gap(from.aboveAllowed),
    aboveNeed: gap(from.aboveNeed),
  };
}

const yearScale = (writer: Writer, largest: number, rainiest: number): { top: string; rain: string } => ({
  top: writer.volumes(largest).said(largest),
  rain: writer.formats.quantity('depth', rainiest),
});

/** Up to which month, and how its volumes are written. */
interface ShownYear {
  readonly until: string;
  readonly confidence: number;
  readonly volumes: VolumeFigures;
}

/** The twelve months that end with the period, on one scale, with rain hanging from the top. */
export function yearOfGauges(writer: Writer, months: readonly GivenMonth[], { until, confidence, volumes }: ShownYear): YearOfGauges {
  const wanted = Array.from({ length: MONTHS }, (_, at) => nextMonth(until, at + 1 - MONTHS));
  const found = wanted.map((month) => months.find((each) => each.month === month) ?? null);
  const known = found.filter((month) => month !== null);
  const largest = largestOf(known);
  const { column, step } = volumes;
  const fullMm = Math.max(LEAST_RAIN_TOP_MM, ...known.map(({ rainMm }) => rainMm ?? 0));
  const shape: GaugeShape = { size: 'month', onPaper: true };
  const shown = { column, confidence, because: writer.words.because };
  const words = gaugeWordsOf(writer.formats, column);
  const rainiest = Math.max(0, ...known.map(({ rainMm }) => rainMm ?? 0));
  return {
    title: writer.words.say('year.title'),
    scale: largest > 0 ? writer.words.say('year.scale', yearScale(writer, largest, rainiest)) : '',
    months: wanted.map((month, at) => {
      const given = found[at];
      const label = writer.formats.monthShort(month);
      if (!given) return { label, drawn: { svg: '', alt: writer.words.say('year.none', { month: writer.formats.month(month) }) } };
      const rain = given.rainMm === null ? {} : { rain: { depth: given.rainMm, full: fullMm } };
      const svg = drawGauge(
        { ...numbersOf(given, shown), leastStep: step, scaleTop: column.fromLitres(largest) * HEADROOM, ...rain },
        words,
        shape,
      );
      const gauge = drawn(svg);
      const rained = writer.formats.quantity('depth', given.rainMm);
      const alt = writer.words.say('year.rain', { month: writer.formats.month(month), rain: rained, gauge: gauge.alt });
      return { label, drawn: { svg, alt } };
    }),
  };
}
