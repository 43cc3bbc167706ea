import { problem } from './problem.js';

/** Faults that any operation may meet. */
export const platformProblems = {
  /** Nobody is signed in, or the session has ended. */
  signInNeeded: problem('SIGN_IN_NEEDED', 401, () => 'Sign in first: there is no session, or it has ended.'),
  /** The role does not include the permission. */
  notAllowed: problem(
    'NOT_ALLOWED',
    403,
    (d: { permission: string }) => `Your role does not include this (${d.permission}). Ask an owner of the organization.`,
  ),
  /** Absent, or another organization's: the same answer. */
  notFound: problem(
    'NOT_FOUND',
    404,
    (d: { thing: string; id: string }) => `There is no ${d.thing} ${d.id}. It may have been removed: load the page again.`,
  ),
  /** A value that cannot be kept. */
  valueRefused: problem(
    'VALUE_REFUSED',
    400,
    (d: { field: string; found: unknown; expected: string }) => `${d.field}: found ${JSON.stringify(d.found)}, expected ${d.expected}.`,
  ),
  /** A rule of the database was met that no deed foresaw. */
  ruleBroken: problem('RULE_BROKEN', 409, (d: { rule: string; says: string }) => d.says),
  /** Something points at a row that is not there, or not in this organization. */
  pointsNowhere: problem('POINTS_NOWHERE', 409, (d: { rule: string; says: string }) => d.says),
  /** Too many tries in a short time. */
  tooMany: problem('TOO_MANY_TRIES', 429, (d: { retryInSeconds: number }) => `Too many tries. Try again in ${d.retryInSeconds} seconds.`),
  /** A query that asks for too much at once. */
  tooDeep: problem(
    'QUERY_TOO_LARGE',
    400,
    (d: { found: number; most: number; what: string }) =>
      `The query has ${d.found} ${d.what}; at most ${d.most} are answered. Ask in parts.`,
  ),
  /** Two wanted the same at the same moment, and one of them had to give way. */
  busy: problem('BUSY', 503, () => 'Somebody else was changing the same at the same moment. Nothing was changed; do it again.'),
  /** Everything else: the log has it under this number. */
  unforeseen: problem(
    'UNFORESEEN',
    500,
    (d: { logged: string }) => `Something went wrong that we did not foresee. It is logged under ${d.logged}; nothing was changed.`,
  ),
};
