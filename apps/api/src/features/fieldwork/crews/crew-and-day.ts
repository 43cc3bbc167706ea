import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { todayIn } from '../organization-clock.js';

/** No crew takes it back; a crew needs a day that is not over. */
export async function crewAndDay(
  tx: OrganizationTransaction,
  crewId: string | null,
  day: string | null,
): Promise<{ readonly crewId: string; readonly day: string } | null> {
  if (!crewId) return null;
  if (!day)
    throw platformProblems.valueRefused({ field: 'day', found: null, expected: 'the day on which the crew does it, as YYYY-MM-DD' });
  await requireComingDay(tx, day);
  return { crewId, day };
}

/** Refuses to give work to a day that is over: nobody would see it there. */
export async function requireComingDay(tx: OrganizationTransaction, day: string): Promise<void> {
  const today = await todayIn(tx);
  if (day < today) throw platformProblems.valueRefused({ field: 'day', found: day, expected: `today (${today}) or a later day` });
}
