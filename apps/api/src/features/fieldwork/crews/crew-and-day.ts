import { platformProblems } from '../../../platform/problems/platform.problems.js';

/** No crew takes it back; a crew needs a day. */
export function crewAndDay(crewId: string | null, day: string | null): { readonly crewId: string; readonly day: string } | null {
  if (!crewId) return null;
  if (!day)
    throw platformProblems.valueRefused({ field: 'day', found: null, expected: 'the day on which the crew does it, as YYYY-MM-DD' });
  return { crewId, day };
}
