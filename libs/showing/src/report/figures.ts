import { type Formats, formatsFor, type VolumeColumn } from '../formats/formats.js';
import { type Known, NOT_KNOWN } from '../formats/numbers.js';
import { type QuantityKind, quantities } from '../formats/quantities.js';
import { roundingStep, roundTo } from '../gauge/drawing/scale.js';
import { type ReportWords, reportWords } from '../words/report-words.js';
import type { ReportInput } from './report-input.js';
import type { Figure } from './report-model.js';

/** What a figure is of. */
export interface FigureOf {
  readonly id: string;
  readonly label: string;
  /** why it is not known, in words */
  readonly reason?: string | null;
}

/** A volume as it is written everywhere: one unit and one rounding for a whole page. */
export interface VolumeFigures {
  readonly column: VolumeColumn;
  /** the largest of them, from which its column follows */
  readonly largestLitres: number;
  /** to whole multiples of which it is written, in the column's unit */
  readonly step: number;
  readonly figure: (of: FigureOf, litres: Known) => Figure;
  /** with its unit, for a sentence; the size without its sign */
  readonly said: (litres: Known) => string;
  /** as it is written, in litres: what money is told of, so that both are of one size */
  readonly asWritten: (litres: number) => number;
  /** a difference as it is written beside the two it is of: rounding alone never makes them disagree */
  readonly between: (litres: Known, high: Known, low: Known) => number | null;
}

/** Everything with which a report writes a number or a word. */
export interface Writer {
  readonly formats: Formats;
  readonly words: ReportWords;
  /** as exact as the largest of them allows; in the unit of `columnLitres` where they stand in a wider column */
  readonly volumes: (largestLitres: number, columnLitres?: number) => VolumeFigures;
  /** of an estimate: three figures, four of a large one */
  readonly roughly: (litres: number) => VolumeFigures;
  readonly money: (of: FigureOf, amount: Known) => Figure;
  readonly quantity: (of: FigureOf, kind: QuantityKind, si: Known) => Figure;
  readonly plain: (of: FigureOf, value: Known, decimals: number) => Figure;
  readonly percent: (of: FigureOf, share: Known) => Figure;
}

/** The number that letters with so many decimals show. */
const asShown = (value: number, decimals: number): number => Number(value.toFixed(decimals)) + 0;

const figure = ({ id, label, reason = null }: FigureOf, value: number | null, unit: string, shown: string): Figure =>
  value === null ? { id, label, value, unit, shown: NOT_KNOWN, reason } : { id, label, value, unit, shown, reason: null };

const isNumber = (value: Known): value is number => typeof value === 'number' && Number.isFinite(value);

export function writerOf(input: Pick<ReportInput, 'language' | 'units' | 'currency' | 'timeZone'>): Writer {
  const formats = formatsFor(input);
  const inDecimals = (of: FigureOf, value: Known, decimals: number, unit: string): Figure => {
    const rounded = isNumber(value) ? asShown(value, decimals) : null;
    return figure(of, rounded, unit, formats.figure(rounded, decimals));
  };
  return {
    formats,
    words: reportWords(input.language),
    volumes: (largest, column = largest) => volumeFigures(formats, largest, { column: formats.volumeColumn(column) }),
    roughly: (litres) => {
      const column = formats.volumeColumn(litres);
      return volumeFigures(formats, litres, { column, coarser: Math.abs(column.fromLitres(litres)) < FOUR_FIGURES_FROM ? 10 : 1 });
    },
    money: (of, amount) => {
      const rounded = isNumber(amount) ? asShown(amount, 0) : null;
      return figure(of, rounded, input.currency, formats.money(rounded));
    },
    quantity: (of, kind, si) => {
      const { fromSi, decimals } = quantities[kind][input.units];
      return inDecimals(of, isNumber(si) ? fromSi(si) : null, decimals, formats.unitOf(kind));
    },
    plain: (of, value, decimals) => inDecimals(of, value, decimals, ''),
    percent: (of, share) => inDecimals(of, isNumber(share) ? share * 100 : null, 0, '%'),
  };
}

/** As the pages round a volume in a sentence. */
const FOUR_FIGURES_FROM = 100_000;

interface Column {
  readonly column: VolumeColumn;
  readonly coarser?: number;
}

function volumeFigures(formats: Formats, largestLitres: number, { column, coarser = 1 }: Column): VolumeFigures {
  // How exact a volume is told follows from its own size, whatever column it stands in: it is the same figure everywhere.
  const own = formats.volumeColumn(largestLitres);
  const least = 10 ** -own.decimals;
  const ownStep = Math.max(least, coarser * roundingStep(own.fromLitres(Math.abs(largestLitres)), least / coarser));
  const step = (ownStep * column.fromLitres(1)) / own.fromLitres(1);
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  const inUnit = (litres: Known): number | null => (isNumber(litres) ? column.fromLitres(litres) : null);
  const written = (litres: Known): number | null => {
    const rounded = isNumber(litres) ? roundTo(column.fromLitres(litres), step) : null;
    return rounded === null ? null : asShown(rounded, decimals);
  };
  return {
    column,
    largestLitres,
    step,
    figure: (of, litres) => figure(of, written(litres), column.unit, formats.figure(written(litres), decimals)),
    between: (litres, high, low) => {
      if (!isNumber(litres)) return null;
      const [above, below] = [roundTo(inUnit(high), step), roundTo(inUnit(low), step)];
      if (above === null || below === null) return litres;
      const perLitre = column.fromLitres(1);
      // The same rule as the gauge's: more than rounding is a gap that the account counted otherwise, and it is kept.
      return Math.abs(above - below - litres * perLitre) <= 1.5 * step ? (above - below) / perLitre : litres;
    },
    asWritten: (litres) => (written(litres) ?? 0) / column.fromLitres(1),
    said: (litres) => {
      const value = written(litres);
      return value === null ? NOT_KNOWN : `${formats.figure(Math.abs(value), decimals)} ${column.unit}`;
    },
  };
}
