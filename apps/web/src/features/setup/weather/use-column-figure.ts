import { useFormats } from '../../../i18n/LanguageProvider.js';
import { type QuantityKind, quantities } from '../../../i18n/quantities.js';

/** A quantity as a figure of a column: in the person's unit, always with as many decimals. */
export function useColumnFigure(): (kind: QuantityKind, si: number | null | undefined) => string {
  const { figure, units } = useFormats();
  return (kind, si) => {
    const { fromSi, decimals } = quantities[kind][units];
    return figure(typeof si === 'number' ? fromSi(si) : null, decimals);
  };
}
