import { DomainError } from './domain-error.js';

/**
 * A number that knows its unit: only the functions of this library make one, so that inches never meet millimetres by accident.
 *
 * The tag exists for the compiler alone; at run time a quantity is a plain number.
 */
export type Quantity<Unit extends string> = number & { readonly __unit: Unit };

/**
 * Gives a number its unit after looking at it: a quantity is always finite.
 *
 * @param value - The number to be tagged, in the unit of the result. [any]
 * @param code - The code to refuse it with. [code]
 * @returns The same number as a quantity. [any]
 * @throws {DomainError} The given code when the number is NaN or infinite.
 */
export function finiteQuantity<Unit extends string>(value: number, code: string): Quantity<Unit> {
  if (!Number.isFinite(value)) throw new DomainError(code, { value });
  return value as Quantity<Unit>;
}
