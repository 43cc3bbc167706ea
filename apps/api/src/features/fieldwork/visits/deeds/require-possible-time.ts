import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { platformProblems } from '../../../../platform/problems/platform.problems.js';
import { nowIn } from '../../organization-clock.js';

/** A phone's clock may be wrong by days; a time from further ahead would stand before everything that comes after. */
const MOST_AHEAD_MS = 3 * 86_400_000;

/** Refuses a time of field work that is further ahead than a clock goes wrong. */
export async function requirePossibleTime(tx: OrganizationTransaction, field: string, at: Date): Promise<void> {
  // A demonstration's clock may stand in the past while its phones go on.
  const now = Math.max((await nowIn(tx)).getTime(), Date.now());
  if (at.getTime() > now + MOST_AHEAD_MS)
    throw platformProblems.valueRefused({ field, found: at.toISOString(), expected: 'a time that is not in the future' });
}

/** When something was said: when the phone kept it, but not later than now. */
export async function saidAt(tx: OrganizationTransaction, savedAt: Date | undefined): Promise<Date> {
  const now = await nowIn(tx);
  return savedAt && savedAt < now ? savedAt : now;
}
