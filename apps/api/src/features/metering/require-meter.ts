import type { OrganizationTransaction } from '../../platform/database/organization-transaction.js';
import { platformProblems } from '../../platform/problems/platform.problems.js';
import { isUuid } from '../../platform/records/uuid.js';
import { meterOfId } from '../portfolio/meters/meter.loader.js';
import { inScope } from '../portfolio/properties/property-scope.service.js';

type Loaded = Awaited<ReturnType<ReturnType<(typeof meterOfId)['of']>['load']>>;

/** A meter as its table has it. */
export type KeptMeter = NonNullable<Loaded>;

/** The meter, retired ones too. Absent, another organization's and out of scope are the same: not found. */
export async function requireMeter(tx: OrganizationTransaction, id: string): Promise<KeptMeter> {
  const meter = isUuid(id) ? await meterOfId.of(tx).load(id.toLowerCase()) : null;
  if (!meter || !(await inScope(tx, [meter.propertyId])).has(meter.propertyId)) throw platformProblems.notFound({ thing: 'meter', id });
  return meter;
}
