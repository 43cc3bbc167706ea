import { DomainError } from '@rillbook/units/domain-error.js';

/** A month's part in the line: its days and its need, and how widely its use scatters against the others. */
export interface LineMonth {
  readonly days: number;
  readonly neededLitres: number;
  /** Relative spread of the error. [–] */
  readonly spread: number;
}

/** The line use = perDay · days + perNeed · need, fitted; and (XᵀWX)⁻¹ as its three distinct elements. */
export interface NeedLine {
  readonly perDay: number;
  readonly perNeed: number;
  readonly inverse: readonly [number, number, number];
}

/** Less than this of what two independent columns would give: days and need cannot be told apart. */
const LEAST_DETERMINANT = 1e-6;

/**
 * Fits metered use to days and weather-corrected need by weighted least squares.
 *
 * β = (XᵀWX)⁻¹ XᵀW M with W = diag(1 / spread²)
 *
 * @param months - Months of the baseline. [d] and [L]
 * @param meteredLitres - Metered use, in the same order. [L]
 * @returns The line. [L/d] and [–]
 * @throws {DomainError} `BASELINE_NEED_CONSTANT` when need per day hardly differs between the months.
 * @source ASHRAE Guideline 14 (inverse linear models), from secondary sources; weighted least squares as in any handbook of statistics.
 */
export function fitNeedLine(months: readonly LineMonth[], meteredLitres: readonly number[]): NeedLine {
  let [dd, dn, nn, dm, nm] = [0, 0, 0, 0, 0];
  months.forEach(({ days, neededLitres, spread }, at) => {
    const weight = 1 / spread ** 2;
    const metered = meteredLitres[at] ?? Number.NaN;
    dd += weight * days * days;
    dn += weight * days * neededLitres;
    nn += weight * neededLitres * neededLitres;
    dm += weight * days * metered;
    nm += weight * neededLitres * metered;
  });
  const determinant = dd * nn - dn * dn;
  if (!(determinant > LEAST_DETERMINANT * dd * nn)) throw new DomainError('BASELINE_NEED_CONSTANT', { months: months.length });
  const inverse = [nn / determinant, -dn / determinant, dd / determinant] as const;
  return { perDay: inverse[0] * dm + inverse[1] * nm, perNeed: inverse[1] * dm + inverse[2] * nm, inverse };
}

/**
 * What the line says of a month.
 *
 * @param line - The line. [L/d] and [–]
 * @param month - The month. [d] and [L]
 * @returns Expected use. [L]
 */
export const onNeedLine = (line: NeedLine, month: Pick<LineMonth, 'days' | 'neededLitres'>): number =>
  line.perDay * month.days + line.perNeed * month.neededLitres;

/**
 * How much each baseline month's error moves what the line says of some later months together.
 *
 * g = x̃ᵀ (XᵀWX)⁻¹ xᵢ / spreadᵢ
 *
 * @param line - The line. [L/d] and [–]
 * @param months - Months of the baseline. [d] and [L]
 * @param total - Days and need of the later months, summed. [d] and [L]
 * @returns One weight for each baseline month, on errors divided by their spread. [–]
 */
export function pullOfErrors(line: NeedLine, months: readonly LineMonth[], total: Pick<LineMonth, 'days' | 'neededLitres'>): number[] {
  const [a, b, c] = line.inverse;
  const [onDays, onNeed] = [a * total.days + b * total.neededLitres, b * total.days + c * total.neededLitres];
  return months.map(({ days, neededLitres, spread }) => (onDays * days + onNeed * neededLitres) / spread);
}
