import { DomainError } from '@rillbook/units/domain-error.js';

/** A value of a month, YYYY-MM. */
export interface OfMonth {
  readonly month: string;
  readonly value: number;
}

const numberOf = (month: string): number => Number(month.slice(0, 4)) * 12 + Number(month.slice(5, 7));

/**
 * Values of months on the calendar: months between that have none keep their place, so that what follows each other is told from what does not.
 *
 * @param values - Values, oldest first. [any]
 * @returns One for each month from the first to the last; null where there is none. [any]
 * @throws {DomainError} `SERIES_OUT_OF_DOMAIN` when a value is not finite.
 */
export function onCalendar(values: readonly OfMonth[]): (number | null)[] {
  if (!values.every(({ value }) => Number.isFinite(value))) throw new DomainError('SERIES_OUT_OF_DOMAIN', { values: values.length });
  const first = values[0];
  if (!first) return [];
  const from = numberOf(first.month);
  const places: (number | null)[] = [];
  for (const { month, value } of values) {
    const at = numberOf(month) - from;
    while (places.length < at) places.push(null);
    places[at] = value;
  }
  return places;
}
