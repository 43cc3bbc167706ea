import { type DateFormats, dateFormats } from './dates.js';
import { units as english, type UnitWord } from '../words/en/units.js';
import { units as spanish } from '../words/es/units.js';
import { type Known, type Language, NOT_KNOWN, type NumberFormats, numberFormats, typedNumber } from './numbers.js';
import { type QuantityKind, quantities, type ShownIn, type UnitSystem } from './quantities.js';

/** One unit for a whole column or drawing, so that its figures can be compared. */
export interface VolumeColumn {
  readonly unit: string;
  readonly thousandUnit: string;
  readonly decimals: number;
  readonly fromLitres: (litres: number) => number;
  /** The figure without its unit, which stands in the head. */
  readonly figure: (litres: Known) => string;
}

export interface Formats extends NumberFormats, DateFormats {
  readonly language: Language;
  readonly units: UnitSystem;
  readonly currency: string;
  readonly timeZone: string;
  /** A quantity in the person's unit, with the unit: 102,270 sq ft. */
  readonly quantity: (kind: QuantityKind, si: Known) => string;
  /** The same without the unit. */
  readonly figureOf: (kind: QuantityKind, si: Known) => string;
  /** The unit alone, for a head or a field. */
  readonly unitOf: (kind: QuantityKind) => string;
  /** What a person typed in their unit, as it is stored; null where it is no number. */
  readonly typed: (kind: QuantityKind, text: string) => number | null;
  /** 389,600 gal; 1,475 m³; 820 L. */
  readonly volume: (litres: Known) => string;
  /** The unit that suits a column whose largest volume is this. */
  readonly volumeColumn: (largestLitres: Known) => VolumeColumn;
  /** 1 h 20 min. */
  readonly minutes: (minutes: Known) => string;
}

export interface Place {
  readonly language: Language;
  readonly units: UnitSystem;
  readonly currency: string;
  readonly timeZone: string;
}

/** Under this a metric volume is told in litres. */
const LITRES_BELOW = 10_000;

/** Every way a person of one language and unit system reads numbers and dates. SI goes in. */
export function formatsFor({ language, units, currency, timeZone }: Place): Formats {
  const words = language === 'es' ? spanish : english;
  const numbers = numberFormats(language, currency);
  const shownIn = (kind: QuantityKind): ShownIn => quantities[kind][units];
  const figureOf = (kind: QuantityKind, si: Known): string => {
    const { fromSi, decimals, decimalsBelowOne = decimals } = shownIn(kind);
    if (typeof si !== 'number') return NOT_KNOWN;
    const shown = fromSi(si);
    return numbers.number(shown, Math.abs(shown) < 1 ? decimalsBelowOne : decimals);
  };
  const withUnit = (figure: string, unit: UnitWord): string => (figure === NOT_KNOWN ? figure : `${figure} ${words[unit]}`);
  const volumeColumn = (largest: Known): VolumeColumn => {
    const inLitres = units === 'metric' && Math.abs(largest ?? 0) < LITRES_BELOW;
    const { unit, fromSi } = inLitres ? { unit: 'unit.l' as const, fromSi: (value: number) => value } : shownIn('volume');
    const decimals = units === 'metric' && !inLitres && Math.abs(largest ?? 0) < 100 * LITRES_BELOW ? 1 : 0;
    const figure = (value: Known): string => (typeof value === 'number' ? numbers.figure(fromSi(value), decimals) : NOT_KNOWN);
    return { unit: words[unit], thousandUnit: `${words['unit.thousand']} ${words[unit]}`, decimals, fromLitres: fromSi, figure };
  };
  return {
    language,
    units,
    currency,
    timeZone,
    ...numbers,
    ...dateFormats(language, timeZone),
    typed: (kind, text) => {
      const value = typedNumber(text);
      return value === null ? null : shownIn(kind).toSi(value);
    },
    figureOf,
    quantity: (kind, si) => withUnit(figureOf(kind, si), shownIn(kind).unit),
    unitOf: (kind) => words[shownIn(kind).unit],
    volumeColumn,
    volume: (value) => {
      const column = volumeColumn(value);
      return typeof value === 'number' ? `${column.figure(value)} ${column.unit}` : NOT_KNOWN;
    },
    minutes: (value) => {
      if (typeof value !== 'number') return NOT_KNOWN;
      const whole = Math.round(value);
      if (whole < 60) return `${whole} ${words['unit.min']}`;
      const rest = whole % 60;
      return `${Math.floor(whole / 60)} ${words['unit.h']}${rest ? ` ${rest} ${words['unit.min']}` : ''}`;
    },
  };
}
