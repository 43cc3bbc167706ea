export type Language = 'en' | 'es';

/** What stands where a number is not known. Its reason stands beside it, in words. */
export const NOT_KNOWN = '–';

/** Both languages write numbers as the customer's country does: 1,234.5. */
export const localeOf = (language: Language): 'en-US' | 'es-US' => (language === 'es' ? 'es-US' : 'en-US');

export type Known = number | null | undefined;

const isKnown = (value: Known): value is number => typeof value === 'number' && Number.isFinite(value);

/** A true minus, as wide as the figures beside it, and never a minus before zero. */
const typeset = (text: string): string => (/[1-9]/.test(text) ? text.replace('-', '−') : text.replace('-', ''));

export interface NumberFormats {
  /** A plain number with at most so many decimals. */
  readonly number: (value: Known, decimals?: number) => string;
  /** Exactly so many decimals, for a column. */
  readonly figure: (value: Known, decimals: number) => string;
  /** With its sign: + 92,700 or − 13,600. */
  readonly signed: (value: Known, decimals?: number) => string;
  /** A share of one as percent. */
  readonly percent: (share: Known, decimals?: number) => string;
  /** Whole money: $854. */
  readonly money: (amount: Known) => string;
  /** Money to the cent, or finer for a price of water. */
  readonly price: (amount: Known, decimals?: number) => string;
}

/** The ways of writing numbers and money in one language. */
export function numberFormats(language: Language, currency: string): NumberFormats {
  const locale = localeOf(language);
  const writers = new Map<string, Intl.NumberFormat>();
  const write = (value: Known, options: Intl.NumberFormatOptions): string => {
    if (!isKnown(value)) return NOT_KNOWN;
    const key = JSON.stringify(options);
    const writer = writers.get(key) ?? new Intl.NumberFormat(locale, options);
    writers.set(key, writer);
    return typeset(writer.format(value));
  };
  const decimalsOf = (least: number, most: number): Intl.NumberFormatOptions => ({
    minimumFractionDigits: least,
    maximumFractionDigits: most,
  });
  const number = (value: Known, decimals = 0): string => write(value, decimalsOf(0, decimals));
  return {
    number,
    figure: (value, decimals) => write(value, decimalsOf(decimals, decimals)),
    signed: (value, decimals = 0) => {
      if (!isKnown(value)) return NOT_KNOWN;
      const size = number(Math.abs(value), decimals);
      if (!/[1-9]/.test(size)) return size;
      return `${value < 0 ? '−' : '+'} ${size}`;
    },
    percent: (share, decimals = 0) => write(share, { style: 'percent', maximumFractionDigits: decimals }),
    money: (amount) => write(amount, { style: 'currency', currency, maximumFractionDigits: 0 }),
    price: (amount, decimals = 2) =>
      write(amount, { style: 'currency', currency, minimumFractionDigits: 2, maximumFractionDigits: decimals }),
  };
}

/**
 * Reads a number as a person types it: 1,234.5 or 1234.5, with a true or a typed minus.
 * Anything else is null: a number is never guessed.
 */
export function typedNumber(text: string): number | null {
  const bare = text.trim().replace('−', '-');
  if (!/^-?(\d+|\d{1,3}(,\d{3})+)?(\.\d+)?$/.test(bare) || !/\d/.test(bare)) return null;
  return Number(bare.replaceAll(',', ''));
}
