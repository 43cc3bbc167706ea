import { DomainError } from '@rillbook/units/domain-error.js';

/** What it takes to get from each place to each other: row by row, `size` × `size`. */
export interface TravelTable {
  readonly size: number;
  /** Driving time. [s] */
  readonly seconds: Float64Array;
  /** Way driven; null where only times are known. [m] */
  readonly metres: Float64Array | null;
}

/**
 * A table from rows that somebody else worked out, as a routing server does.
 *
 * @param seconds - Driving times, one row for each place of departure. [s]
 * @param metresDriven - Ways, in the same shape; null when they are not known. [m]
 * @returns The table. [s]
 * @throws {DomainError} `TRAVEL_TABLE_OUT_OF_DOMAIN` when a row has not as many values as there are rows, or a value is missing or below zero.
 */
export function givenTravel(
  seconds: readonly (readonly (number | null)[])[],
  metresDriven: readonly (readonly (number | null)[])[] | null = null,
): TravelTable {
  const size = seconds.length;
  return { size, seconds: flat(seconds, size, 'seconds'), metres: metresDriven && flat(metresDriven, size, 'metres') };
}

function flat(rows: readonly (readonly (number | null)[])[], size: number, what: string): Float64Array {
  const table = new Float64Array(size * size);
  if (rows.length !== size) throw new DomainError('TRAVEL_TABLE_OUT_OF_DOMAIN', { what, rows: rows.length, size });
  for (const [from, row] of rows.entries()) {
    if (row.length !== size) throw new DomainError('TRAVEL_TABLE_OUT_OF_DOMAIN', { what, from, values: row.length, size });
    for (const [to, value] of row.entries()) {
      if (value === null || !(Number.isFinite(value) && value >= 0))
        throw new DomainError('TRAVEL_TABLE_OUT_OF_DOMAIN', { what, from, to, value });
      table[from * size + to] = from === to ? 0 : value;
    }
  }
  return table;
}
