import { DomainError } from '@rillbook/units/domain-error.js';
import { millimetresFromInches } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/** Normal reference evapotranspiration of a region. */
export type NormalEto = {
  /** Normal ETo of each month, January first. [mm], twelve of them */
  readonly months: readonly Quantity<'mm'>[];
  /** How the row is known: read as text, or from memory. [code] */
  readonly known: 'text' | 'memory';
};

/** Inches a month as the map prints them, January first. */
const INCHES: Readonly<Record<number, readonly number[]>> = {
  1: [0.93, 1.4, 2.48, 3.3, 4.03, 4.5, 4.65, 4.03, 3.3, 2.48, 1.2, 0.62],
  2: [1.24, 1.68, 3.1, 3.9, 4.65, 5.1, 4.96, 4.65, 3.9, 2.79, 1.8, 1.24],
  3: [1.86, 2.24, 3.72, 4.8, 5.27, 5.7, 5.58, 5.27, 4.2, 3.41, 2.4, 1.86],
  4: [1.86, 2.24, 3.41, 4.5, 5.27, 5.7, 5.89, 5.58, 4.5, 3.41, 2.4, 1.86],
  5: [0.93, 1.68, 2.79, 4.2, 5.58, 6.3, 6.51, 5.89, 4.5, 3.1, 1.5, 0.93],
  6: [1.86, 2.24, 3.41, 4.8, 5.58, 6.3, 6.51, 6.2, 4.8, 3.72, 2.4, 1.86],
  7: [0.62, 1.4, 2.48, 3.9, 5.27, 6.3, 7.44, 6.51, 4.8, 2.79, 1.2, 0.62],
  8: [1.24, 1.68, 3.41, 4.8, 6.2, 6.9, 7.44, 6.51, 5.1, 3.41, 1.8, 0.93],
  9: [2.17, 2.8, 4.03, 5.1, 5.89, 6.6, 7.44, 6.82, 5.7, 4.03, 2.7, 1.86],
  10: [0.93, 1.68, 3.1, 4.5, 5.89, 7.2, 8.06, 7.13, 5.1, 3.1, 1.5, 0.93],
  11: [1.55, 2.24, 3.1, 4.5, 5.89, 7.2, 8.06, 7.44, 5.7, 3.72, 2.1, 1.55],
  12: [1.24, 1.96, 3.41, 5.1, 6.82, 7.8, 8.06, 7.13, 5.4, 3.72, 1.8, 0.93],
  13: [1.24, 1.96, 3.1, 4.8, 6.51, 7.8, 8.99, 7.75, 5.7, 3.72, 1.8, 0.93],
  14: [1.55, 2.24, 3.72, 5.1, 6.82, 7.8, 8.68, 7.75, 5.7, 4.03, 2.1, 1.55],
  15: [1.24, 2.24, 3.72, 5.7, 7.44, 8.1, 8.68, 7.75, 5.7, 4.03, 2.1, 1.24],
  16: [1.55, 2.52, 4.03, 5.7, 7.75, 8.7, 9.3, 8.37, 6.3, 4.34, 2.4, 1.55],
  17: [1.86, 2.8, 4.65, 6, 8.06, 9, 9.92, 8.68, 6.6, 4.34, 2.7, 1.86],
  18: [2.48, 3.36, 5.27, 6.9, 8.68, 9.6, 9.61, 8.68, 6.9, 4.96, 3, 2.17],
};

/** Zones whose row was not read as text. */
const FROM_MEMORY: readonly number[] = [9, 10];

/** Numbers of the zones, 1 to 18. */
export const etoZones: readonly number[] = Object.keys(INCHES).map(Number);

/**
 * Normal reference evapotranspiration of a zone of the state's map, month by month: what a station without a record of its own may take as its
 * normals.
 *
 * @param etoZone - Number of the zone, 1 to 18. [–]
 * @returns Twelve months and how the row is known. [mm]
 * @throws {DomainError} `ETO_ZONE_UNKNOWN` when there is no such zone.
 * @source California Department of Water Resources and UC Davis (1999), Reference Evapotranspiration Zones map; zones 9 and 10 from memory, December of zone 14 as in two of three files, the only one that adds up to the printed year.
 */
export function etoOfZone(etoZone: number): NormalEto {
  const inches = INCHES[etoZone];
  if (!inches) throw new DomainError('ETO_ZONE_UNKNOWN', { etoZone });
  return { months: inches.map((each) => millimetresFromInches(each)), known: FROM_MEMORY.includes(etoZone) ? 'memory' : 'text' };
}
