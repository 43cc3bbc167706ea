import { In, IsNull } from 'typeorm';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { isUuid } from '../../../platform/records/uuid.js';
import { CrewRow } from './crew.entity.js';

/** All SQL of crews. */
export const crews = {
  /** Those in use, by name; of some crews only, or of all. */
  inUse(tx: OrganizationTransaction, only: readonly string[] | null): Promise<CrewRow[]> {
    const some = only ? { id: In([...only]) } : {};
    return tx.of(CrewRow).find({ where: { organizationId: tx.organizationId, retiredAt: IsNull(), ...some }, order: { name: 'ASC' } });
  },

  ofIds(tx: OrganizationTransaction, ids: readonly string[]): Promise<CrewRow[]> {
    return tx.of(CrewRow).findBy({ organizationId: tx.organizationId, id: In(ids.filter(isUuid)) });
  },

  /** How many work orders are given out to a crew. */
  async workGivenOut(tx: OrganizationTransaction, crewId: string): Promise<number> {
    const [row] = await tx.query<{ count: number }>(
      `select count(*)::int as count from work_order
         join stop on stop.organization_id = work_order.organization_id and stop.id = work_order.stop_id
         join route on route.organization_id = stop.organization_id and route.id = stop.route_id
        where work_order.organization_id = $1 and route.crew_id = $2 and work_order.state = 'given out'`,
      [tx.organizationId, crewId],
    );
    return row!.count;
  },
};
