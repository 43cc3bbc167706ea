import { platformProblems } from './platform.problems.js';
import type { Problem } from './problem.js';

/** What the driver says of a broken constraint. */
interface DriverError {
  readonly code?: string;
  readonly constraint?: string;
  readonly driverError?: DriverError;
}

const UNIQUE = '23505';
const FOREIGN = '23503';
const CHECK = '23514';
const NOT_NULL = '23502';
const OUT_OF_RANGE = ['22003', '22008', '22P02', '22021'];

const words = (name: string): string => name.replaceAll('_', ' ');

/** The constraint that a failed statement broke, if it broke one. */
export function brokenConstraint(thrown: unknown): { kind: 'unique' | 'foreign' | 'check' | 'absent'; name: string } | null {
  const error = ((thrown as DriverError | null)?.driverError ?? thrown) as DriverError | null;
  const kind = { [UNIQUE]: 'unique', [FOREIGN]: 'foreign', [CHECK]: 'check', [NOT_NULL]: 'absent' }[error?.code ?? ''] as 'unique' | undefined;
  return kind ? { kind, name: error?.constraint ?? '' } : null;
}

/**
 * The database speaks through the names of its constraints: each name is a sentence's subject and rule.
 *
 * @returns the problem, or null when the error is none of a constraint or a value out of range
 */
export function constraintProblem(thrown: unknown): Problem | null {
  const broken = brokenConstraint(thrown);
  if (broken) {
    const rule = words(broken.name);
    if (broken.kind === 'foreign') return platformProblems.pointsNowhere({ rule: broken.name, says: `This names something that is not there, or is still needed elsewhere (${rule}).` });
    if (broken.kind === 'unique') return platformProblems.ruleBroken({ rule: broken.name, says: `There is already one like this (${rule}). Change the name or the date, or change the one that is there.` });
    return platformProblems.ruleBroken({ rule: broken.name, says: `A value is missing or outside what is possible (${rule}).` });
  }
  const code = ((thrown as DriverError | null)?.driverError ?? (thrown as DriverError | null))?.code;
  return code && OUT_OF_RANGE.includes(code) ? platformProblems.ruleBroken({ rule: code, says: 'A value has the wrong form or is outside what can be kept.' }) : null;
}
