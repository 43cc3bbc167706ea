import { DomainError } from '@rillbook/units/domain-error.js';
import { type ModelFit, modelFit } from '../statistics/model-fit.js';
import { correlationOfErrors, varianceOfSum } from './month-to-month.js';
import { onCalendar } from './on-calendar.js';
import { fitNeedLine, type LineMonth, type NeedLine, onNeedLine } from './need-line.js';

/** A whole month whose metered use and weather-corrected need are both known. */
export interface SavingsMonth {
  readonly month: string;
  readonly days: number;
  readonly neededLitres: number;
  readonly meteredLitres: number;
}

/** What a property's meter passed before the work, as a function of its need. */
export interface NeedBaseline {
  /** The months it was fitted to, oldest first, with the spread that each was given. */
  readonly months: readonly (SavingsMonth & LineMonth)[];
  readonly line: NeedLine;
  /** Standard deviation of an error over its spread. [L] */
  readonly sd: number;
  /** Correlation of a month's error with the next. [–] */
  readonly correlation: number;
  /** Degrees of freedom, fewer where errors follow each other. [–] */
  readonly freedom: number;
  readonly fit: ModelFit;
  /** Mean metered use of a baseline month, from which spreads are taken. [L] */
  readonly meanLitres: number;
}

/** Fewer months do not tell need from what runs every day. */
export const LEAST_BASELINE_MONTHS = 9;
/** Parameters p of the line. */
const PARAMETERS = 2;
/** Share of the spread that is the same in every month; the rest grows with use (common practice, held by `prove -- savings`). */
const STEADY_SPREAD = 0.3;
const LEAST_SPREAD = 0.2;
const ROUNDS = 3;
const LEAST_FREEDOM = 3;

/**
 * Spread of a month's error relative to the others: a steady part and one that grows with the use that is expected.
 *
 * @param expectedLitres - Use that the line expects. [L]
 * @param meanLitres - Mean use of a baseline month. [L]
 * @returns The spread. [–]
 */
export const spreadOf = (expectedLitres: number, meanLitres: number): number =>
  Math.max(LEAST_SPREAD, STEADY_SPREAD + (1 - STEADY_SPREAD) * (expectedLitres / meanLitres));

/**
 * The baseline: metered use before the work, as a line over days and weather-corrected need.
 *
 * M = a · days + b · N + e, weighted, with errors that follow each other from month to month
 *
 * @param months - Whole months before the work, oldest first. [L]
 * @returns The baseline and how well it fits. [L]
 * @throws {DomainError} `BASELINE_TOO_SHORT` below nine months; `BASELINE_WITHOUT_USE` when nothing was metered; `BASELINE_NEED_CONSTANT`.
 * @source IPMVP option C (whole facility, adjusted baseline) and ASHRAE Guideline 14, both from secondary sources, applied to water.
 */
export function fitNeedBaseline(months: readonly SavingsMonth[]): NeedBaseline {
  const count = months.length;
  if (count < LEAST_BASELINE_MONTHS) throw new DomainError('BASELINE_TOO_SHORT', { months: count, least: LEAST_BASELINE_MONTHS });
  const metered = months.map(({ meteredLitres }) => meteredLitres);
  const meanLitres = metered.reduce((sum, litres) => sum + litres, 0) / count;
  if (!(meanLitres > 0)) throw new DomainError('BASELINE_WITHOUT_USE', { months: count });
  let spread = months.map((month) => ({ ...month, spread: 1 }));
  let line = fitNeedLine(spread, metered);
  for (let round = 1; round < ROUNDS; round += 1) {
    spread = months.map((month) => ({ ...month, spread: spreadOf(onNeedLine(line, month), meanLitres) }));
    line = fitNeedLine(spread, metered);
  }
  const expected = spread.map((month) => onNeedLine(line, month));
  const errors = spread.map((month, at) => (month.meteredLitres - (expected[at] ?? Number.NaN)) / month.spread);
  const correlation = correlationOfErrors(onCalendar(months.map(({ month }, at) => ({ month, value: errors[at] ?? Number.NaN }))));
  const squares = errors.reduce((sum, error) => sum + error * error, 0);
  return {
    months: spread,
    line,
    sd: Math.sqrt(squares / (count - parametersSpent(line, spread, correlation))),
    correlation,
    freedom: Math.max(LEAST_FREEDOM, ((count - PARAMETERS) * (1 - correlation ** 2)) / (1 + correlation ** 2)),
    fit: modelFit(metered, expected, PARAMETERS),
    meanLitres,
  };
}

// tr(H V): what fitting takes from the errors' squares when they follow each other; p where they do not.
function parametersSpent(line: NeedLine, months: readonly (SavingsMonth & LineMonth)[], correlation: number): number {
  const [a, b, c] = line.inverse;
  const sumOf = (value: (month: LineMonth) => number): number => {
    const placed = onCalendar(months.map((each) => ({ month: each.month, value: value(each) / each.spread })));
    return varianceOfSum(
      placed.map((each) => each ?? 0),
      correlation,
    );
  };
  const both = sumOf(({ days, neededLitres }) => days + neededLitres);
  const [dd, nn] = [sumOf(({ days }) => days), sumOf(({ neededLitres }) => neededLitres)];
  return a * dd + c * nn + b * (both - dd - nn);
}
