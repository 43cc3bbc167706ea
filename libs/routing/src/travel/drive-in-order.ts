import type { TravelTable } from './travel-table.js';

/**
 * Driving time of places visited in a given order, as that of a person's list.
 *
 * @param table - Travel between places. [s]
 * @param places - Places in the order of driving, first and last included. [–]
 * @returns The sum over each step. [s]
 */
export function driveInOrder(table: TravelTable, places: readonly number[]): number {
  let sum = 0;
  for (const [at, place] of places.entries()) if (at > 0) sum += table.seconds[(places[at - 1] as number) * table.size + place] as number;
  return sum;
}
