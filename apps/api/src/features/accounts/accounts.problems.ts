import { problem } from '../../platform/problems/problem.js';

/** What may be wrong with the facts that accounts are computed from. */
export const accountsProblems = {
  /** The library refuses a value that no gate refused: the property keeps the accounts that it had. */
  notComputed: problem(
    'ACCOUNTS_NOT_COMPUTED',
    409,
    (d: { properties: string; others: number }) =>
      `No account could be computed of ${d.properties}. Correct the value and compute again; the accounts of ${d.others} others are up to date.`,
  ),
};
