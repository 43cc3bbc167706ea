import { useMemo } from 'react';
import { useFormats } from '../i18n/LanguageProvider.js';
import { type Known, NOT_KNOWN } from '../i18n/numbers.js';
import { roundedBetween, roundingStep, roundTo } from '@rillbook/showing/gauge/drawing/scale.js';

export interface WrittenColumn {
  readonly unit: string;
  /** A figure as exact as the largest of its column allows, so that the column agrees with the gauge. */
  readonly figure: (litres: Known) => string;
  /** The same with its sign. */
  readonly signed: (litres: Known) => string;
  /** A gap between two volumes of the column as the gauge writes it, without its sign, and what share of the exact one that is. */
  readonly between: (litres: number, low: Known, high: Known) => { readonly text: string; readonly share: number };
}

/** A column of volumes in one unit, rounded by its largest. */
export function useVolumeColumn(largestLitres: number): WrittenColumn {
  const { volumeColumn, figure, signed } = useFormats();
  return useMemo(() => {
    const { unit, fromLitres } = volumeColumn(largestLitres);
    const step = roundingStep(fromLitres(largestLitres));
    const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
    const written = (litres: Known): number | null => (typeof litres === 'number' ? roundTo(fromLitres(litres), step) : null);
    return {
      unit,
      figure: (litres) => (typeof litres === 'number' ? figure(written(litres), decimals) : NOT_KNOWN),
      signed: (litres) => (typeof litres === 'number' ? signed(written(litres), decimals) : NOT_KNOWN),
      between: (litres, low, high) => {
        const exact = fromLitres(litres);
        const shown = roundedBetween(exact, written(low), written(high), step) ?? exact;
        return { text: `${figure(Math.abs(shown), decimals)} ${unit}`, share: exact === 0 ? 1 : shown / exact };
      },
    };
  }, [volumeColumn, figure, signed, largestLitres]);
}

/** From here on figures are told in thousands, so that twelve of them find room. */
const IN_THOUSANDS_FROM = 10_000;

/** A column that has little room, of months beside each other: in thousands where its largest has more than four figures. */
export function useNarrowColumn(largestLitres: number): Pick<WrittenColumn, 'unit' | 'figure'> {
  const formats = useFormats();
  const column = formats.volumeColumn(largestLitres);
  if (column.fromLitres(largestLitres) < IN_THOUSANDS_FROM) return column;
  return {
    unit: column.thousandUnit,
    figure: (litres) => formats.figure(typeof litres === 'number' ? column.fromLitres(litres) / 1000 : null, 1),
  };
}
