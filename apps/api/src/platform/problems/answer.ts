import { randomUUID } from 'node:crypto';
import { log } from './log.js';
import { constraintProblem } from './constraint-problems.js';
import { isPassingFault } from './passing-fault.js';
import { platformProblems } from './platform.problems.js';
import { Problem } from './problem.js';

/** Turns whatever was thrown into a problem that a person may see. What was not foreseen is logged whole and shown as a number. */
export function asProblem(thrown: unknown): Problem {
  if (thrown instanceof Problem) return thrown;
  const known = constraintProblem(thrown);
  if (known) return known;
  if (isPassingFault(thrown)) {
    log.warn({ err: thrown }, 'gave way');
    return platformProblems.busy({});
  }
  const logged = randomUUID().slice(0, 8);
  log.error({ logged, err: thrown }, 'unforeseen');
  return platformProblems.unforeseen({ logged });
}
