import { DomainError } from '@rillbook/units/domain-error.js';
import { millimetresFromInches } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/** Mean annual rain [in] and the share of a year's, or a month's, mean that comes in four years of five. */
const RATIOS: readonly (readonly [meanRainInches: number, ratio: number])[] = [
  [3, 0.45],
  [4, 0.5],
  [5, 0.54],
  [6, 0.57],
  [7, 0.6],
  [8, 0.62],
  [9, 0.63],
  [10, 0.65],
  [12, 0.69],
  [14, 0.71],
  [16, 0.73],
  [18, 0.74],
  [20, 0.75],
  [22, 0.77],
  [24, 0.78],
  [26, 0.79],
  [28, 0.8],
  [30, 0.81],
  [35, 0.82],
  [40, 0.83],
  [45, 0.84],
  [50, 0.85],
  [55, 0.86],
  [60, 0.87],
  [70, 0.88],
  [80, 0.89],
  [90, 0.9],
];

/**
 * Share of mean rain that comes in four years of five, by mean annual rain (NEH 623, Table 2-46).
 *
 * Straight between the table's values.
 *
 * @param meanAnnualRain - Mean rain of a year. [mm]
 * @returns Rain at 80 % probability over mean rain. [–]
 * @throws {DomainError} `MEAN_RAIN_OUT_OF_DOMAIN` outside the table.
 * @domain 3 … 90 in (76 … 2286 mm)
 * @source USDA-NRCS (1993), National Engineering Handbook 623, chapter 2, Table 2-46, as coded in a public library; its first six rows of rain,
 * 3 to 8 in, are assumed there.
 */
export function dependableRainRatio(meanAnnualRain: Quantity<'mm'>): number {
  const above = RATIOS.findIndex(([inches]) => millimetresFromInches(inches) >= meanAnnualRain);
  const [high, low] = [RATIOS[above], RATIOS[above - 1]];
  if (high && millimetresFromInches(high[0]) === meanAnnualRain) return high[1];
  if (!high || !low) throw new DomainError('MEAN_RAIN_OUT_OF_DOMAIN', { meanAnnualRain });
  const [from, to] = [millimetresFromInches(low[0]), millimetresFromInches(high[0])];
  return low[1] + ((meanAnnualRain - from) / (to - from)) * (high[1] - low[1]);
}
