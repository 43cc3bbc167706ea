import { problem } from '../../platform/problems/problem.js';

/** What may be wrong with what is decided of a finding. */
export const findingsProblems = {
  /** Only what is still told can be made silent. */
  notOpen: problem(
    'FINDING_NOT_OPEN',
    409,
    (d: { id: string; state: string }) =>
      `The finding is ${d.state}: only one that is open or in work can be acknowledged. Open it again first.`,
  ),
};
