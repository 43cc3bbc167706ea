import { problem } from '../../problems/problem.js';

/** Faults of signing in, members and invitations. */
export const identityProblems = {
  /** The present password does not fit. */
  wrongPassword: problem('WRONG_PASSWORD', 403, () => 'This is not the present password. Type it again; nothing was changed.'),
  /** Unknown, used, replaced or too old: the same answer. */
  invitationNotValid: problem(
    'INVITATION_NOT_VALID',
    410,
    () => 'This invitation was used, replaced or is older than seven days. Ask an owner of the organization for a new one.',
  ),
  /** The address belongs to a member in use. */
  alreadyMember: problem(
    'ALREADY_MEMBER',
    409,
    (d: { email: string }) => `${d.email} is a member already. Change the role in the list of members.`,
  ),
  /** An organization keeps at least one owner. */
  lastOwner: problem('LAST_OWNER', 409, () => 'This is the last owner of the organization. Make somebody else an owner first.'),
  /** Somebody changed the thing since it was read. */
  changedMeanwhile: problem(
    'CHANGED_MEANWHILE',
    409,
    (d: { thing: string; version: number }) =>
      `Somebody changed this ${d.thing} since you loaded it (now version ${d.version}). Load the page again and decide.`,
  ),
  /** Only the first organization is founded from the sign-in page. */
  serverNotEmpty: problem(
    'SERVER_NOT_EMPTY',
    409,
    () => 'There is an organization on this server already. Ask one of its owners for an invitation.',
  ),
  /** Real data is not cleared at one press. */
  notADemo: problem('NOT_A_DEMO', 409, () => 'This organization is not a demonstration; it is not cleared.'),
};
