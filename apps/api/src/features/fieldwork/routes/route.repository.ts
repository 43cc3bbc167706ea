import { In } from 'typeorm';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { RouteRow } from './route.entity.js';

/** All SQL of routes. */
export const routes = {
  ofIds(tx: OrganizationTransaction, ids: readonly string[]): Promise<RouteRow[]> {
    return tx.of(RouteRow).findBy({ organizationId: tx.organizationId, id: In([...ids]) });
  },

  /** Those of the days from and until, both included, that have a stop; of some crews only, or of all. */
  between(tx: OrganizationTransaction, days: { from: string; until: string }, crewIds: readonly string[] | null): Promise<RouteRow[]> {
    const query = tx
      .of(RouteRow)
      .createQueryBuilder('route')
      .where('route.organizationId = :organization and route.day between :from and :until', { organization: tx.organizationId, ...days })
      .andWhere(
        'exists (select from stop where stop.organization_id = route.organization_id and stop.route_id = route.id and stop.retired_at is null)',
      );
    if (crewIds) query.andWhere('route.crewId = any(:crews)', { crews: crewIds });
    return query
      .orderBy('route.day')
      .addOrderBy('(select name from crew where crew.organization_id = route.organization_id and crew.id = route.crew_id)')
      .getMany();
  },

  ofCrewAndDay(tx: OrganizationTransaction, crewId: string, day: string): Promise<RouteRow | null> {
    return tx.of(RouteRow).findOneBy({ organizationId: tx.organizationId, crewId, day });
  },
};
