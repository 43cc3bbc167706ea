import { DomainError } from '@rillbook/units/domain-error.js';

/** The code and details with which a deed is refused; a deed that is not refused, or fails otherwise, is a fault of the test. */
export const refusalOf = (deed: () => unknown): readonly [string, Readonly<Record<string, unknown>>] => {
  try {
    deed();
  } catch (problem) {
    if (problem instanceof DomainError) return [problem.code, problem.details];
    throw problem;
  }
  throw new Error('it was not refused');
};
