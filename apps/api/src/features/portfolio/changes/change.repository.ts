import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import type { Change } from './change.type.js';

/** A change, and the property that its thing stands on. */
export interface PropertyChange extends Change {
  readonly propertyId: string;
}

const COLUMNS =
  'change.id, change.thing, change.thing_id as "thingId", change.deed, change.before, change.after, person.name as by, change.way, change.at';

/** Each property, and what stands or stood on it. */
const ON_PROPERTIES = `
  select id, id as property_id from property where organization_id = $1
  union all select id, property_id from meter where organization_id = $1
  union all select id, property_id from controller where organization_id = $1
  union all select id, property_id from zone where organization_id = $1
  union all select id, property_id from backflow_assembly where organization_id = $1
  union all select planting.id, zone.property_id from planting join zone on zone.organization_id = planting.organization_id and zone.id = planting.zone_id where planting.organization_id = $1`;

/** All SQL that reads the record of changes. */
export const changes = {
  /** The newest changes of a thing, the newest first. */
  ofThing(tx: OrganizationTransaction, thingId: string, most: number): Promise<Change[]> {
    return tx.query<Change>(
      `select ${COLUMNS} from change left join person on person.id = change.person_id where change.organization_id = $1 and change.thing_id = $2 order by change.at desc, change.thing_version desc limit $3`,
      [tx.organizationId, thingId, most],
    );
  },

  /** The newest changes of properties and of what stands on them, so many for each, the newest first. */
  ofProperties(tx: OrganizationTransaction, propertyIds: readonly string[], most: number): Promise<PropertyChange[]> {
    return tx.query<PropertyChange>(
      `select * from (
         select ${COLUMNS}, stands.property_id as "propertyId", row_number() over (partition by stands.property_id order by change.at desc, change.thing_version desc) as place
         from (${ON_PROPERTIES}) stands
         join change on change.organization_id = $1 and change.thing_id = stands.id
         left join person on person.id = change.person_id
         where stands.property_id = any($2::uuid[])
       ) ranked where place <= $3 order by at desc, place`,
      [tx.organizationId, propertyIds, most],
    );
  },

  /** The property that a thing stands on; null for things that stand on none, such as a client. */
  async propertyOf(tx: OrganizationTransaction, thingId: string): Promise<string | null> {
    const [row] = await tx.query<{ property_id: string }>(`select property_id from (${ON_PROPERTIES}) stands where id = $2`, [
      tx.organizationId,
      thingId,
    ]);
    return row?.property_id ?? null;
  },
};
