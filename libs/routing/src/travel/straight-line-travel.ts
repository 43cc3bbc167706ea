import { DomainError } from '@rillbook/units/domain-error.js';
import { metresPerSecondFromKilometresPerHour } from '@rillbook/units/speed.js';
import { greatCircleDistance, type Position } from './great-circle-distance.js';
import type { TravelTable } from './travel-table.js';

/** How driving is estimated where no roads are known. */
export interface StraightLine {
  /** Way by road over the straight line. [–] */
  readonly factor: number;
  /** Mean speed from door to door, parking not counted. [km/h] */
  readonly kilometresPerHour: number;
  /** What each drive between two different places takes besides: getting in, parking, getting out. [s] */
  readonly perDriveS: number;
}

/**
 * The estimate where nobody states another: roads a third longer than the straight line, which is common practice for towns (Boscoe, Henry
 * and Zdeb 2012 found a mean of 1.417 in the United States by road, lower in towns on a grid); the speed and the minutes at the kerb are
 * common practice too.
 */
export const USUAL_STRAIGHT_LINE: StraightLine = { factor: 1.3, kilometresPerHour: 40, perDriveS: 120 };

/**
 * Travel between places, estimated from straight lines: an estimate, to be shown as such.
 *
 * metres = factor · great circle; seconds = metres / speed + perDriveS, and 0 from a place to itself
 *
 * @param positions - The places in their order. [°]
 * @param straightLine - Factor, speed and the time each drive takes besides. [–]
 * @returns The table. [s]
 * @throws {DomainError} `STRAIGHT_LINE_OUT_OF_DOMAIN` when the factor is below 1, the speed not above 0 or the time besides below 0.
 */
export function straightLineTravel(positions: readonly Position[], straightLine: StraightLine = USUAL_STRAIGHT_LINE): TravelTable {
  const { factor, kilometresPerHour, perDriveS } = straightLine;
  if (!(factor >= 1 && kilometresPerHour > 0 && perDriveS >= 0 && Number.isFinite(factor + kilometresPerHour + perDriveS))) {
    throw new DomainError('STRAIGHT_LINE_OUT_OF_DOMAIN', { factor, kilometresPerHour, perDriveS });
  }
  const speed = metresPerSecondFromKilometresPerHour(kilometresPerHour);
  const size = positions.length;
  const seconds = new Float64Array(size * size);
  const metres = new Float64Array(size * size);
  for (const [row, from] of positions.entries()) {
    for (const [column, to] of positions.entries()) {
      const way = factor * greatCircleDistance(from, to);
      metres[row * size + column] = way;
      seconds[row * size + column] = way > 0 ? way / speed + perDriveS : 0;
    }
  }
  return { size, seconds, metres };
}
