import { DomainError } from '@rillbook/units/domain-error.js';
import { millimetresFromInches } from '@rillbook/units/length.js';
import type { NormalEto } from './eto-zones.js';

/** Places whose twelve months were read as text; the state's whole table was not obtained, and rows from memory are no data. */
export type PlaceWithEto = 'Vacaville' | 'Vacaville, Lagoon Valley';

/** Inches a month as the code prints them, January first. */
const INCHES: Readonly<Record<PlaceWithEto, readonly number[]>> = {
  Vacaville: [0.7, 1.4, 3.2, 5.2, 6.3, 7.6, 8.2, 7.2, 5.5, 4.3, 1.6, 1.1],
  'Vacaville, Lagoon Valley': [1.1, 1.7, 2.8, 4, 5.5, 6.1, 7.8, 6, 4.8, 3.1, 1.4, 0.9],
};

/**
 * Normal reference evapotranspiration that an ordinance prints for a place, month by month.
 *
 * @param place - Name of the place. [code]
 * @returns Twelve months, read as text. [mm]
 * @throws {DomainError} `PLACE_UNKNOWN` when no row of that place was read.
 * @source Vacaville, California, municipal code, Table 14.27.030.A.
 */
export function etoOfPlace(place: PlaceWithEto): NormalEto {
  const inches = INCHES[place];
  if (!inches) throw new DomainError('PLACE_UNKNOWN', { place });
  return { months: inches.map((each) => millimetresFromInches(each)), known: 'text' };
}
