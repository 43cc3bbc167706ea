import { checkSentence, onceSentence, pointerSentence } from './constraint-sentences.js';
import { platformProblems } from './platform.problems.js';
import type { Problem } from './problem.js';

/** What the driver says of a broken constraint. */
interface DriverError {
  readonly code?: string;
  readonly constraint?: string;
  readonly table?: string;
  readonly column?: string;
  readonly driverError?: DriverError;
}

type Kind = 'unique' | 'foreign' | 'check' | 'absent';

/** SQLSTATE class 23, integrity constraint violation. */
const KINDS: Readonly<Record<string, Kind>> = {
  '23505': 'unique',
  '23503': 'foreign',
  '23514': 'check',
  '23502': 'absent',
  '23001': 'foreign',
};
const OUT_OF_RANGE = ['22003', '22007', '22008', '22P02', '22021'];

const driverErrorOf = (thrown: unknown): DriverError | null =>
  ((thrown as DriverError | null)?.driverError ?? thrown) as DriverError | null;

/** A missing value breaks no named constraint: its name is made as the database would make it. */
const absentName = ({ table = 'row', column = 'value' }: DriverError): string => `${table}_${column}_not_null`;

/** The constraint that a failed statement broke, if it broke one. */
export function brokenConstraint(thrown: unknown): { kind: Kind; name: string; table: string | undefined } | null {
  const error = driverErrorOf(thrown);
  const kind = KINDS[error?.code ?? ''];
  if (!error || !kind) return null;
  return { kind, name: error.constraint ?? (kind === 'absent' ? absentName(error) : ''), table: error.table };
}

/**
 * The database speaks through the names of its constraints: each name is a sentence's subject and rule.
 *
 * @returns the problem, or null when the error is none of a constraint or a value out of range
 */
export function constraintProblem(thrown: unknown): Problem | null {
  const broken = brokenConstraint(thrown);
  if (!broken) {
    const code = driverErrorOf(thrown)?.code;
    return code && OUT_OF_RANGE.includes(code)
      ? platformProblems.ruleBroken({ rule: code, says: 'A value has the wrong form or is outside what can be kept.' })
      : null;
  }
  const { kind, name: rule, table } = broken;
  if (kind === 'foreign') return platformProblems.pointsNowhere({ rule, says: pointerSentence(rule, table) });
  if (kind === 'unique') return platformProblems.ruleBroken({ rule, says: onceSentence(rule, table) });
  return platformProblems.ruleBroken({
    rule,
    says: checkSentence(rule, table) ?? `A value is missing or outside what is possible (${rule.replaceAll('_', ' ')}).`,
  });
}
