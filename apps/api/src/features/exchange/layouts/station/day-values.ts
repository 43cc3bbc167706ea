import type { ProblemCode, ProblemParts } from '../../problems/problem.js';

/** The values of a weather day, each under its column of weather.csv. */
export const dayColumns = {
  tmaxC: 'tmax_f',
  tminC: 'tmin_f',
  rhMaxPercent: 'rhmax',
  rhMinPercent: 'rhmin',
  dewPointC: 'dewpoint_f',
  windMPerS: 'wind_mph',
  solarMjPerM2: 'solar_mj_m2',
  rainMm: 'rain_in',
  givenEtoMm: 'eto_in',
} as const;

/** A value of a weather day. */
export type DayField = keyof typeof dayColumns;
/** The values that a file gives of a day; null where it leaves one out. */
export type DayValues = { readonly [Field in DayField]?: number | null };

/** What one line of a file gives: a day, or a part of one. */
export interface Piece {
  /** yyyy-mm-dd; null where it could not be read */
  readonly day: string | null;
  /** Which part of the day: an hour, an element; a part comes once. */
  readonly part: string;
  readonly values: Readonly<Record<string, number | null>>;
}

/** What is to be said of a day, by the file's own column. */
export interface DayNote {
  readonly code: ProblemCode;
  readonly parts: ProblemParts;
}

/** A day put together from its pieces. */
export interface SettledDay {
  readonly values: DayValues;
  readonly notes: readonly DayNote[];
}
