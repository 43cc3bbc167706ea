/**
 * A number of a list, 0 beyond its ends.
 *
 * @param values - The list. [any]
 * @param place - The place, from 0. [–]
 * @returns The number. [any]
 */
export function valueAt(values: ArrayLike<number>, place: number): number {
  return values[place] ?? 0;
}
