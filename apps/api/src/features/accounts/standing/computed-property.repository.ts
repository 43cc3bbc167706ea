import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { textArray, uuidArray } from '../../../platform/database/binary-arrays.js';

/** What is on record of a property, and what it was last computed from. */
export interface PropertyOnRecord {
  readonly propertyId: string;
  readonly timeZone: string;
  readonly standsStillOn: string | null;
  /** changes with every row that enters its accounts or findings */
  readonly facts: string;
  /** null where its accounts have to be computed */
  readonly computedFrom: string | null;
}

const OF_PROPERTY = 'where t.organization_id = $1';
const owned = (owner: string): string =>
  `join ${owner} o on o.organization_id = t.organization_id and o.id = t.${owner}_id where t.organization_id = $1`;

/** Every table whose rows enter the accounts and findings of one property: the column that names it, and how a row comes to it. */
const TABLES: readonly (readonly [table: string, property: string, rows: string])[] = [
  ['property', 't.id', OF_PROPERTY],
  ['zone', 't.property_id', OF_PROPERTY],
  ['planting', 'o.property_id', owned('zone')],
  ['controller', 't.property_id', OF_PROPERTY],
  ['settings', 'o.property_id', owned('controller')],
  ['rain_pause', 'o.property_id', owned('controller')],
  ['meter', 't.property_id', OF_PROPERTY],
  ['reading', 'o.property_id', owned('meter')],
  ['usage_day', 'o.property_id', owned('meter')],
  ['bill', 'o.property_id', owned('meter')],
];

/** Those whose rows enter many: weather is filled from any neighbour. */
const SHARED = ['weather_station', 'weather_day', 'water_supplier', 'rate_tier', 'watering_rule'] as const;

// Rows are added up, as their order says nothing; each table has a seed of its own.
const FACTS = TABLES.map(
  ([table, property, rows], seed) => `select ${property} as property_id, hash_record_extended(t, ${seed}) as part from ${table} t ${rows}`,
).join(' union all ');
const SHARED_FACTS = SHARED.map(
  (table, seed) => `select hash_record_extended(t, ${seed}) as part from ${table} t where t.organization_id = $1`,
).join(' union all ');

const ON_RECORD = `select p.id as "propertyId", p.time_zone as "timeZone", own.stands_still_on::text as "standsStillOn",
    concat_ws(' ', facts.rows, facts.sum, shared.rows, shared.sum, own.least_confidence, own.least_litres, own.least_money) as facts,
    computed.inputs as "computedFrom"
  from property p
  join organization own on own.id = p.organization_id
  join (select property_id, count(*) as rows, sum(part) as sum from (${FACTS}) every group by property_id) facts on facts.property_id = p.id
  cross join (select count(*) as rows, sum(part) as sum from (${SHARED_FACTS}) every) shared
  left join computed_property computed on computed.organization_id = p.organization_id and computed.property_id = p.id
  where p.organization_id = $1 and p.retired_at is null`;

/** All SQL of what properties were computed from. */
export const computedProperties = {
  /** Every property in use, with what is on record of it now. */
  onRecord(tx: OrganizationTransaction): Promise<PropertyOnRecord[]> {
    return tx.query<PropertyOnRecord>(ON_RECORD, [tx.organizationId]);
  },

  /** Notes from what properties are computed, by property. */
  async keep(tx: OrganizationTransaction, inputs: ReadonlyMap<string, string>): Promise<void> {
    await tx.query(
      `insert into computed_property (organization_id, property_id, inputs) select $1::uuid, * from unnest($2::uuid[], $3::text[])
        on conflict (organization_id, property_id) do update set inputs = excluded.inputs`,
      [tx.organizationId, uuidArray([...inputs.keys()]), textArray([...inputs.values()])],
    );
  },

  /** Properties that have to be computed, whatever is on record of them. */
  async forget(tx: OrganizationTransaction, propertyIds: readonly string[]): Promise<void> {
    await tx.query('delete from computed_property where organization_id = $1 and property_id = any($2)', [tx.organizationId, propertyIds]);
  },
};
