import type { Heading } from '../station/heading.js';
import type { DayField, Piece, SettledDay } from '../station/day-values.js';
import type { StationLayout } from '../station/station-layout.js';

/** A day that stands on one line. */
export function oneLineDay([piece]: readonly Piece[]): SettledDay {
  return { values: piece?.values ?? {}, notes: [] };
}

type Sources = { readonly [Field in DayField]?: string };

/** The values whose columns the file has. */
export function present(sources: Sources): StationLayout['gives'] {
  return ({ places }: Heading) => Object.fromEntries(Object.entries(sources).filter(([, column]) => places.has(column)));
}
