import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';

/** What an operation speaks of. */
export interface Subject {
  readonly id: string;
  readonly propertyId: string;
  /** of the zone, meter or controller; null where it is the whole property */
  readonly name: string | null;
}

/** All SQL of what operations speak of. */
export const subjects = {
  /** Zones, meters, controllers, orders, visits and stops by their ids. */
  ofIds(tx: OrganizationTransaction, ids: readonly string[]): Promise<Subject[]> {
    const of = (table: string, name: string) =>
      `select id, property_id as "propertyId", ${name} as name from ${table} where organization_id = $1 and id = any($2::uuid[])`;
    return tx.query(
      [
        ...['zone', 'meter', 'controller'].map((table) => of(table, 'name')),
        ...['work_order', 'visit', 'stop'].map((table) => of(table, 'null::text')),
        // The name that a phone gave to a visit which another had begun.
        'select arrival.id, visit.property_id, null::text from arrival join visit on visit.organization_id = arrival.organization_id and visit.id = arrival.visit_id where arrival.organization_id = $1 and arrival.id = any($2::uuid[]) and arrival.id <> visit.id',
      ].join(' union all '),
      [tx.organizationId, ids],
    );
  },
};
