import type { IntlShape } from 'react-intl';
import type { FormProblem } from '../../ui/forms/ProblemList.js';

/** The server asks for as many; it is said here before anything is sent. */
export const LEAST_PASSWORD = 8;

/** What must be typed before signing in. */
export const missingOf = (intl: IntlShape, email: string, password: string): FormProblem[] => [
  ...(email.trim() ? [] : [{ field: 'email', words: intl.formatMessage({ id: 'identity.email.missing' }) }]),
  ...(password ? [] : [{ field: 'password', words: intl.formatMessage({ id: 'identity.password.missing' }) }]),
];

/** What is wrong with a new password. */
export const newPasswordProblems = (intl: IntlShape, password: string): FormProblem[] =>
  password.length >= LEAST_PASSWORD
    ? []
    : [{ field: 'password', words: intl.formatMessage({ id: 'identity.password.short' }, { count: password.length }) }];

/** The problem that belongs to a field. */
export const problemOfField = (problems: readonly FormProblem[], field: string): string | undefined =>
  problems.find((problem) => problem.field === field)?.words;
