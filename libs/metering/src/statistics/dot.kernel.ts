/**
 * Sum of the products of two lists, place by place.
 *
 * @param one - The one list. [any]
 * @param other - The other, of the same length. [any]
 * @returns The sum. [any]
 */
export function dot(one: ArrayLike<number>, other: ArrayLike<number>): number {
  let sum = 0;
  for (let at = 0; at < one.length; at++) sum += (one[at] as number) * (other[at] as number);
  return sum;
}
