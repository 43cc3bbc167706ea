import { DomainError } from '@rillbook/units/domain-error.js';

/** A month under way says something after a week: common practice. [d] */
const FEWEST_DAYS = 7;

/** The last two weeks say how the days to come will be, where normals do not. [d] */
const LAST_DAYS = 14;

/** Half width of a band that holds nine of ten months, in standard deviations of a normal distribution. */
const NINE_OF_TEN = 1.645;

/**
 * A month under way. `perDay` is what drives use on the days so far: programmed water where it is known, else the need. `normalPerDay` is what
 * is usual of the same on the days to come, from the station's normals; null where that is not known.
 */
export interface MonthUnderWay {
  readonly daysInMonth: number;
  readonly metered: number;
  readonly perDay: readonly number[];
  readonly normalPerDay: number | null;
}

/** What a month will come to, with the band that holds nine of ten. */
export interface ProjectedMonth {
  readonly litres: number;
  readonly sdLitres: number;
  readonly lowerLitres: number;
  readonly upperLitres: number;
}

/**
 * What a month under way will come to.
 *
 * M + r·m·d, with r metered over driven water so far, m the mean of a day to come and d the days left; sd = r·s·√(d + d²/n), with s the
 * scatter of the last n days: that of the days to come, and that of their mean
 *
 * @param month - The days so far, and what is usual of those to come. [L]
 * @returns The projection; null in the month's first week, or where nothing was driven and so nothing can be told. [L]
 * @throws {DomainError} `MONTH_OUT_OF_DOMAIN` when there are more days than the month has, or a volume is not finite.
 */
export function projectMonth(month: MonthUnderWay): ProjectedMonth | null {
  const { daysInMonth, metered, perDay, normalPerDay } = month;
  const left = daysInMonth - perDay.length;
  if (!(left >= 0 && [metered, normalPerDay ?? 0, ...perDay].every(Number.isFinite))) {
    throw new DomainError('MONTH_OUT_OF_DOMAIN', { daysInMonth, days: perDay.length, metered });
  }
  const driven = perDay.reduce((sum, litres) => sum + litres, 0);
  if (perDay.length < FEWEST_DAYS || driven <= 0) return null;
  const last = perDay.slice(-LAST_DAYS);
  const mean = last.reduce((sum, litres) => sum + litres, 0) / last.length;
  const scatter = Math.sqrt(last.reduce((sum, litres) => sum + (litres - mean) ** 2, 0) / (last.length - 1));
  const ratio = Math.max(0, metered / driven);
  const litres = metered + ratio * (normalPerDay ?? mean) * left;
  const sdLitres = ratio * scatter * Math.sqrt(left + left ** 2 / last.length);
  return {
    litres,
    sdLitres,
    lowerLitres: Math.max(metered, litres - NINE_OF_TEN * sdLitres),
    upperLitres: litres + NINE_OF_TEN * sdLitres,
  };
}
