import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { platformProblems } from '../../../../platform/problems/platform.problems.js';
import { isUuid } from '../../../../platform/records/uuid.js';
import type { MonthPlanRow } from './month-plan.entity.js';
import { monthPlans } from './month-plan.repository.js';

/** The planning that was made under this id when the same was sent before; null where it comes for the first time, and no other goes on then. */
export async function plannedBefore(tx: OrganizationTransaction, id: string | null, month: string): Promise<MonthPlanRow | null> {
  if (id && !isUuid(id)) throw platformProblems.valueRefused({ field: 'deviceRecordId', found: id, expected: 'a UUID made by the device' });
  await monthPlans.oneAtATime(tx);
  const made = id ? await monthPlans.ofId(tx, id) : null;
  if (id && made && made.month !== `${month}-01`)
    throw platformProblems.valueRefused({ field: 'deviceRecordId', found: id, expected: 'a UUID of its own for each record' });
  return made;
}
