/**
 * A number that knows its unit: only the functions of this library make one, so that inches never meet millimetres by accident.
 *
 * The tag exists for the compiler alone; at run time a quantity is a plain number.
 */
export type Quantity<Unit extends string> = number & { readonly __unit: Unit };
